// The benchmark itself: a perfect answer has perfect figures, a wrong one hasn't, and no row is missing.
#include "bench/aubio.h"
#include "bench/design_table.h"
#include "bench/run.h"
#include "bench/truth.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::bench;

namespace {

Group group_named(const std::string& name) {
    for (Group& g : own_groups())
        if (g.name == name) return std::move(g);
    FAIL("no group " << name);
    return {};
}

/// One scene in two registers, one over a band.
Results measured(bool truth_as_answer) {
    return run_scenes(
        {.groups = {{group_named("two registers"), 1000, 1000}, {group_named("instrumental"), 1001, 1001}},
         .jobs = 2,
         .truth_as_answer = truth_as_answer});
}

bool perfect(const reference::Score& s) {
    return s.there > 0 && s.hits == s.there && s.hits == s.said;
}

} // namespace

TEST_CASE("the truth fed back as an answer scores perfectly") {
    Scores s;
    for (const GroupScores& g : measured(true).groups)
        s += g.scores;
    const auto pitch = s.pitch.score();
    CHECK(pitch.raw_pitch == 1);
    CHECK(pitch.raw_chroma == 1);
    CHECK(pitch.voicing_recall == 1);
    CHECK(pitch.voicing_false_alarm == 0);
    CHECK(pitch.overall == 1);
    for (const auto& score : {s.breaths, s.phrase_starts, s.phrase_ends, s.lenient_starts, s.lenient_ends,
                              s.switches, s.notes, s.pitched_notes, s.vibratos})
        CHECK(perfect(score));
    CHECK(s.audible_breaths.hits == s.audible_breaths.there);
    for (const Confusion& kinds : {s.onsets, s.offsets}) {
        CHECK(kinds.all() > 0);
        CHECK(kinds.accuracy() == 1);
        CHECK(kinds.macro_f() == 1);
    }
    CHECK(s.registers.of > 0);
    CHECK(s.registers.part == s.registers.of);
    CHECK(s.vowels.part == s.vowels.of);
    for (const auto* errors :
         {&s.cents_off, &s.vibrato_rate, &s.vibrato_extent, &s.f1_error, &s.f2_error, &s.level_spread}) {
        REQUIRE_FALSE(errors->empty());
        CHECK(*std::ranges::max_element(*errors) == Approx(0).margin(1e-6));
    }
    CHECK(s.instrumental.of > 8);
    CHECK(s.instrumental.part == 0);
    for (const auto& [mark, reliability] : s.calibration) {
        CAPTURE(mark);
        CHECK(reliability.count() > 0);
        CHECK(reliability.error() == 0);
    }
}

TEST_CASE("the ear's own answer is scored, beside another program's, in every table and row") {
    const Results r = measured(false);
    REQUIRE(r.scenes.size() == 2);
    CHECK(r.groups[0].scores.pitch.score().raw_pitch > 0.8);
    CHECK(r.groups[0].scores.pitch.score().raw_pitch < 1);
    CHECK(best_of(r.groups[0].scores.others).raw_pitch.value_or(0) > 0.5);
    for (const Table& t : score_tables(r.groups)) {
        CAPTURE(t.title);
        CHECK_FALSE(t.rows.empty());
        for (const auto& row : t.rows)
            CHECK(row.size() == t.head.size());
    }
    CHECK(pitch_table(r.groups).rows.size() == 2);
    const Table design = design_table(r.groups, {});
    CHECK(design.rows.size() == 16); // the plan's fourteen, two of them in two parts
    for (const auto& row : design.rows)
        CHECK((row[3] == "met" || row[3] == "missed" || row[3] == "not measured"));
}

TEST_CASE("a wrong answer costs what it should") {
    Truth truth;
    truth.breaths = {{{{Seconds(1), Seconds(1.3)}}, {{Seconds(5), Seconds(5.3)}, false}}};
    truth.phrases = {{{Seconds(1.4), Seconds(4.8)}, {Seconds(5.4), Seconds(9)}}};
    truth.switches = {{{Seconds(2)}}};
    marks::Analysis said = answer_of(truth, Seconds(10));
    said.breaths.pop_back();                                                     // one missed
    said.breaths.push_back({{Seconds(7), Seconds(7.2)}, {}, {}, {}, {0.9}, ""}); // and one claimed
    said.phrases[0].span.end += Seconds(0.31);
    std::swap(said.switches[0].from, said.switches[0].to);
    Scores s;
    score_breaths(s, truth, said), score_phrases(s, truth, said), score_switches(s, truth, said);
    CHECK(s.breaths.f() == Approx(0.5));
    CHECK(s.audible_breaths.hits == 1);
    CHECK(s.audible_breaths.there == 1);
    CHECK(s.phrase_starts.f() == 1);
    CHECK(s.phrase_ends.f() == Approx(0.5));
    CHECK(s.switches.hits == 0);
    CHECK(s.calibration.at("breath").error() == Approx(0.45)); // 1.9 of confidence, one right of two
}

TEST_CASE("the design's verdict follows the number") {
    Machine machine;
    machine.solo = Speed{60.0, 3};
    machine.accompanied = Speed{24.9, 3};
    machine.hour_megabytes = 400.4; // rounds to the limit
    const Table t = design_table({}, machine);
    CHECK(t.rows[0][3] == "met");
    CHECK(t.rows[1][3] == "missed");
    CHECK(t.rows[2][3] == "missed");
    CHECK(t.rows[5][3] == "not measured");
}

TEST_CASE("expected calibration error is the mean distance of share right from confidence") {
    Reliability r;
    for (int k = 0; k < 10; ++k)
        r.add({0.9}, k < 6);
    for (int k = 0; k < 10; ++k)
        r.add({0.5}, k < 5);
    r.add({1}, true);
    CHECK(r.bins()[4].count == 11);
    CHECK(r.bins()[2].count == 10);
    CHECK(r.error() == Approx((10 - 7.0) / 21));
}
