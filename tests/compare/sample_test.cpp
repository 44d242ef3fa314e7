// The sample project's two performances: tenor and alto, three semitones and some tempo apart, each with a
// band of its own, which the ear hears from the committed recordings.
#include "base/bytes.h"
#include "compare/differences.h"
#include "compare/heard.h"
#include "media/media.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

const std::filesystem::path kSample = LUFT_SAMPLE_PROJECT;

/// Ids go up with the syllables; a syllable "-" is sung on, an added note.
Performed performed(const char* media, const char* truth) {
    const auto source = media::open_sound(open_file(kSample / "media" / media));
    Performed out;
    out.side = side_of(marks::listen(*source));
    out.side.harmony = hear_harmony(*source, out.side.tuning);
    std::ifstream file(kSample / "truth" / truth);
    singer::Truth notes;
    std::vector<int> ids;
    int id = 0;
    const auto all = nlohmann::json::parse(file);
    for (const auto& n : all.at("notes")) {
        notes.notes.emplace_back().span = {Seconds(n.at("start_s").get<double>()),
                                           Seconds(n.at("end_s").get<double>())};
        ids.push_back(n.at("syllable").get<std::string>() == "-" ? -1 : id++);
    }
    out.notes = placed(notes, ids, out.side);
    return out;
}

} // namespace

TEST_CASE("the sample's two performances are aligned within 50 ms, three semitones apart") {
    const Performed a = performed("over-water-vasslow.mp4", "over-water-vasslow.json"),
                    b = performed("over-water-marnik.mkv", "over-water-marnik.json");
    const Alignment found = align(a.side, b.side);
    const Errors e = errors_of(a, b, found);
    INFO("median " << e.median_ms << " ms, 95 % " << e.p95_ms << " ms, lost " << e.lost << " of " << e.shared
                   << ", pairs right " << e.right_pairs << ", wrong " << e.wrong_pairs);
    CHECK(e.shared == 56);
    CHECK(found.semitones == 3);
    CHECK(std::abs(found.tuning.value()) < 10);
    CHECK(e.lost == 0);
    CHECK(e.median_ms < 50);
    CHECK(e.p95_ms < 200);
    CHECK(e.right_pairs >= 0.9);
    CHECK(e.wrong_pairs <= 0.15); // measured: 0.09, at the turn
    for (const TempoPoint& p : tempo_curve(found))
        CHECK(p.speed == Approx(96.0 / 84).epsilon(0.1));

    const Counterparts pairs = find_counterparts(a.side, b.side, found);
    REQUIRE_FALSE(pairs.phrases.empty());
    CHECK(pairs.phrases[0].a == std::vector<std::size_t>{0, 1}); // where the alto saves the breath
    CHECK(pairs.phrases[0].b == std::vector<std::size_t>{0});
    CHECK(pairs.phrases_only_a.empty());
    CHECK(pairs.phrases_only_b.empty());
    // The alto's turn on "bay" is all that either adds.
    CHECK(pairs.added_by_a.empty());
    REQUIRE_FALSE(pairs.added_by_b.empty());
    for (const std::size_t i : pairs.added_by_b)
        CHECK(std::ranges::any_of(
            b.notes, [&](const PlacedNote& n) { return n.id < 0 && n.span.overlaps(b.side.notes[i].span); }));
}

TEST_CASE("what differs between the sample's two performances was put in, and nothing else is claimed") {
    const Performed a = performed("over-water-vasslow.mp4", "over-water-vasslow.json"),
                    b = performed("over-water-marnik.mkv", "over-water-marnik.json");
    const Alignment alignment = align(a.side, b.side);
    // sample-project/README.md, with the tenor's times of sample-project/truth.
    struct PutIn {
        DifferenceKind kind;
        double from, to;    ///< of the tenor's time; -1: of the whole
        double least, most; ///< size
        bool found = false;
    };
    using enum DifferenceKind;
    std::vector<PutIn> all{{key, -1, -1, 3, 3},
                           {tempo, -1, -1, 13, 15.5},             // 96 against 84 beats a minute
                           {breath_saved, 11.0, 11.5, -1, -1},    // after "home"
                           {phrase_joined, 11.0, 11.5, -1, -1},   // the same
                           {vibrato, 15.0, 15.2, 30, 50},         // "foam"
                           {note_intonation, 15.0, 15.2, 33, 43}, // "foam", flat by 38 cents
                           {added_notes, 21.0, 21.6, 3, 4},       // the turn on "bay"
                           {vibrato, 26.3, 26.6, -60, -30},       // "away"
                           {note_intonation, 47.0, 47.3, 21, 31}, // "hill", sharp by 26 cents
                           {breath_saved, 47.7, 48.2, -1, -1},    // after "hill"
                           {level_shape, 51.3, 51.6, -10, -3},    // a swell against trailing off
                           {vibrato, 54.9, 55.1, -60, -40}};      // "mine"
    for (const Difference& d :
         find_differences(a.side, b.side, alignment, find_counterparts(a.side, b.side, alignment))) {
        INFO(name_of(d.kind) << ": " << d.size << ", " << d.sentence);
        const double at = d.a ? d.a->start.value() : -1;
        const auto meant = std::ranges::find_if(all, [&](const PutIn& p) {
            return p.kind == d.kind && p.from <= at && at <= p.to && p.least <= d.size && d.size <= p.most;
        });
        CHECK(meant != all.end());
        if (meant != all.end()) meant->found = true;
    }
    for (const PutIn& p : all) {
        INFO(name_of(p.kind) << " at " << p.from);
        CHECK(p.found);
    }
}
