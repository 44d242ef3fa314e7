#include "profile/demo_source.h"
#include "profile/profile.h"

#include <catch2/catch.hpp>

#include <map>
#include <numeric>

using namespace luft;
using namespace luft::profile;

namespace {

const FacetProfile* facet(const Profile& p, const std::string& key) {
    for (const auto& f : p.facets)
        if (f.key == key) return &f;
    return nullptr;
}

int count(const Profile& p, const std::string& facet_key, const std::string& shade) {
    if (const auto* f = facet(p, facet_key))
        for (const auto& s : f->shades)
            if (s.tag.shade == shade) return s.count;
    return 0;
}

/// A source with nothing but notes, a second each, a fifth of a second apart.
Source notes_only(const std::vector<marks::Note>& notes) {
    Source s;
    s.vocabulary = vocabulary::default_vocabulary();
    double t = 1;
    for (auto note : notes) {
        note.span = {Seconds(t), Seconds(t + 1)};
        t += 1.2;
        project::Mark mark;
        mark.what = note;
        s.marks.push_back(mark);
    }
    s.performance.facts.duration = Seconds(t);
    return s;
}

marks::Note plain(double midi, double cents = 0) {
    marks::Note n;
    n.pitch = MidiPitch(midi + cents / 100);
    n.cents = Cents(cents);
    n.level = Decibels(-20);
    n.onset.confidence = n.offset.confidence = n.confidence = {0.9};
    return n;
}

std::string all_words(const Profile& p) {
    std::string out;
    for (const auto& s : p.headline)
        out += s + "\n";
    for (const auto* list : {&p.strengths, &p.watch, &p.practise})
        for (const auto& f : *list)
            out += f.words + "\n";
    for (const auto& f : p.facets)
        out += f.summary + "\n";
    return out;
}

} // namespace

TEST_CASE("A source with nothing in it gives a profile that says so") {
    const auto p = make_profile({});
    CHECK(p.notes == 0);
    CHECK_FALSE(p.range);
    REQUIRE(p.headline.size() == 1);
    CHECK(p.headline.front().find("hasn't been listened to") != std::string::npos);
    CHECK(p.strengths.empty());
}

TEST_CASE("One note is enough for a profile, and its range isn't divided") {
    const auto p = make_profile(notes_only({plain(69)}));
    REQUIRE(p.range);
    CHECK(p.range->lowest == MidiPitch(69));
    CHECK_FALSE(p.range->divided);
    const auto* onset = facet(p, "onset");
    REQUIRE(onset);
    REQUIRE(onset->shades.size() == 1);
    CHECK(onset->shades[0].by_range == std::array<int, 3>{0, 1, 0});
    CHECK(onset->shades[0].share == 1);
}

TEST_CASE("Unsure proposals stay out, and marks that the coach kept always count") {
    auto s = notes_only({plain(60), plain(62), plain(64)});
    std::get<marks::Note>(s.marks[0].what).confidence = {0.49};
    std::get<marks::Note>(s.marks[1].what).confidence = {0.1};
    s.marks[1].state = project::MarkState::kept;
    s.marks[2].state = project::MarkState::dropped;
    const auto p = make_profile(s);
    CHECK(p.notes == 1);
    CHECK(p.left_out == 1);
}

TEST_CASE("A melodic interval 20 to 25 cents out still counts as centred") {
    // Vurma & Ross 2006, Music Perception 23(4): expert listeners pass 20 to 25 cents as in tune.
    const auto p = make_profile(notes_only({plain(60, 20), plain(62, -24), plain(64, 31), plain(65, -40)}));
    CHECK(count(p, "intonation", "centred") == 2);
    CHECK(count(p, "intonation", "sharp") == 1);
    CHECK(count(p, "intonation", "flat") == 1);
}

TEST_CASE("Vibrato is told fast, slow, wide and narrow by the published ranges") {
    // 5 to 7 Hz; half-extents of 30 to 100 cents (Timmers & Desain 2000: whole swings of 0.6 to 2 semitones).
    auto fast = plain(60), slow = plain(62), wide = plain(64), narrow = plain(65), usual = plain(67);
    fast.vibrato = {Hertz(7.6), Cents(50), 0.9};
    slow.vibrato = {Hertz(4.2), Cents(50), 0.9};
    wide.vibrato = {Hertz(6), Cents(130), 0.9};
    narrow.vibrato = {Hertz(6), Cents(20), 0.9};
    usual.vibrato = {Hertz(6), Cents(71), 0.3};
    const auto p = make_profile(notes_only({fast, slow, wide, narrow, usual, plain(69)}));
    for (const char* shade : {"fast", "slow", "wide", "narrow", "uneven", "straight"})
        CHECK(count(p, "vibrato", shade) == 1);
    CHECK(count(p, "vibrato", "even") == 4);
}

TEST_CASE("Notes are named and divided at the performance's own tuning") {
    auto s = notes_only({plain(69 - 0.3177), plain(57 - 0.3177)});
    s.listening = project::Listening{};
    s.listening->tuning = Hertz(432); // 31.77 cents under 440 Hz, by the definition of the cent
    s.listening->duration = Seconds(5);
    const auto p = make_profile(s);
    REQUIRE(p.range);
    CHECK(p.range->highest.value() == Approx(69).margin(0.001));
    CHECK(p.range->thirds[0].value() == Approx(61).margin(0.001));
}

TEST_CASE("Every shade's count is the sum over range and over song, and shares of an axis don't exceed one") {
    const auto p = make_profile(demo::source());
    CHECK(p.facets.size() >= 12);
    for (const auto& f : p.facets) {
        std::map<std::string, double> by_axis;
        for (const auto& s : f.shades) {
            INFO(f.key << ":" << s.tag.shade);
            CHECK(std::accumulate(s.by_range.begin(), s.by_range.end(), 0) == s.count);
            CHECK(std::accumulate(s.by_quarter.begin(), s.by_quarter.end(), 0) == s.count);
            CHECK(s.by_coach <= s.count);
            CHECK(s.best);
            by_axis[s.axis] += s.share;
        }
        for (const auto& [axis, sum] : by_axis)
            CHECK(sum <= 1 + 1e-9);
        for (const auto& m : f.measures) {
            CHECK(m.low <= m.median);
            CHECK(m.median <= m.high);
            CHECK(m.count > 0);
        }
    }
}

TEST_CASE("A facet that only the coach judges comes from tags alone, and says so") {
    auto s = demo::source();
    const auto with = make_profile(s);
    const auto* posture = facet(with, "posture");
    REQUIRE(posture);
    CHECK(posture->basis == vocabulary::Basis::coach);
    CHECK(posture->shades.at(0).by_coach == 1);
    CHECK(posture->summary.find("coach") != std::string::npos);
    REQUIRE_FALSE(with.watch.empty());
    CHECK(with.watch.front().coach);
    s.moments.clear();
    CHECK(facet(make_profile(s), "posture") == nullptr);
}

TEST_CASE("A coach's tag confirms what was detected there, and stands for itself elsewhere") {
    auto s = notes_only({plain(60), plain(64), plain(67)});
    std::get<marks::Note>(s.marks[0].what).onset.kind = marks::OnsetKind::breathy;
    project::Moment m;
    m.shades = {{"onset", "breathy"}};
    m.span = {Seconds(1), Seconds(1.5)}; // over the first note
    s.moments = {m};
    CHECK(count(make_profile(s), "onset", "breathy") == 1);
    s.moments[0].span = {Seconds(3.4), Seconds(4)}; // over the third
    CHECK(count(make_profile(s), "onset", "breathy") == 2);
    s.moments[0].state = project::MarkState::proposed; // not the coach's word yet
    CHECK(count(make_profile(s), "onset", "breathy") == 1);
}

TEST_CASE(
    "Hints are marked as hints, and each thing to practise names a drill that the profile brings along") {
    const auto p = make_profile(demo::source());
    for (const auto* list : {&p.strengths, &p.watch})
        for (const auto& f : *list)
            if (!f.coach && (f.facet == "closure" || f.facet == "resonance" || f.facet == "larynx" ||
                             f.facet == "vowel-shape"))
                CHECK(f.hint);
    REQUIRE_FALSE(p.practise.empty());
    for (const auto& f : p.practise) {
        const auto same = [&](const vocabulary::Drill& d) { return d.key == f.drill; };
        CHECK(std::count_if(p.drills.begin(), p.drills.end(), same) == 1);
    }
}

TEST_CASE("A mid-phrase breath is listed with its time and a drill") {
    const auto p = make_profile(demo::source());
    bool listed = false;
    for (const auto& f : p.watch)
        listed |= f.facet == "breath" && f.words.find("0:17.4") != std::string::npos;
    CHECK(listed);
    CHECK(count(p, "breath", "mid-phrase") == 2);
}

TEST_CASE("No sentence of a profile speaks of health or finds fault") {
    const std::string words = all_words(make_profile(demo::source()));
    for (const char* never :
         {"health", "damage", "disorder", "nodule", "patholog", "wrong", "bad ", "fault", "poor"})
        CHECK(words.find(never) == std::string::npos);
}

TEST_CASE("It works without curves, without marks of one kind, and with thousands of notes") {
    auto s = demo::source();
    s.curves = {};
    const auto bare = make_profile(s);
    CHECK(bare.notes == 71);
    CHECK(facet(bare, "intonation"));
    std::erase_if(s.marks, [](const project::Mark& m) { return m.kind() == project::MarkKind::phrase; });
    CHECK(make_profile(s).phrases == 0);
    const auto many = make_profile(demo::source(30));
    CHECK(many.notes == 30 * 71);
}

TEST_CASE("The same source gives the same profile") {
    const auto s = demo::source();
    CHECK(all_words(make_profile(s)) == all_words(make_profile(s)));
}
