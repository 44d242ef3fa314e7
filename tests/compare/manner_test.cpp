// Scoops, drifts, cracks, vowels, closure, ring and range of level, put into one of two performances whose
// every note is known.
#include "compare/alike.h"
#include "compare/place_words.h"

#include <cmath>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

using enum DifferenceKind;

/// Curves that say the same all the time.
void fill(Side& side, double level, double cpp, double h1h2, double ring) {
    const auto flat = [&](double v) {
        return Curve<Decibels>(std::vector<float>(side.f0.size(), static_cast<float>(v)));
    };
    side.level = flat(level), side.cpp = flat(cpp), side.h1h2 = flat(h1h2), side.ring = flat(ring);
}

void set(Curve<Decibels>& curve, Span where, double db) {
    for (auto f = nearest_frame(where.start).value; f < nearest_frame(where.end).value; ++f)
        curve.set(static_cast<std::size_t>(f), Decibels(db));
}

Alike filled(std::uint64_t seed, int semitones = 4) {
    Alike pair(seed, semitones);
    fill(pair.a, -20, 12, 4, -20);
    fill(pair.b, -22, 10, 5, -22); // another room: alike throughout
    return pair;
}

} // namespace

TEST_CASE("curves that differ alike throughout by little are no difference") {
    for (const std::uint64_t seed : {541, 542})
        CHECK(beside_key(filled(seed)).empty());
}

TEST_CASE("a note reached from much further below is told, and one from a little further isn't") {
    Alike pair(543);
    const std::size_t at = held_note(pair.b);
    for (marks::Note& n : pair.a.notes)
        n.scoop = Cents(50);
    for (marks::Note& n : pair.b.notes)
        n.scoop = Cents(90);
    CHECK(beside_key(pair).empty()); // the ear is 61 cents unsure
    pair.b.notes[at].scoop = Cents(270);
    check_one(pair, scoop, 220, pair.b.notes[at].span);
}

TEST_CASE("a held note that sinks is told with how far") {
    Alike pair(544);
    const std::size_t at = held_note(pair.b);
    pair.b.notes[at].drift = Cents(-45);
    check_one(pair, drift, -45, pair.b.notes[at].span);
    pair.b.notes[at].drift = Cents(-20);
    CHECK(beside_key(pair).empty());
}

TEST_CASE("a voice that cracks in one note is told, and a shallow dip isn't") {
    Alike pair = filled(545);
    const Span note = pair.b.notes[held_note(pair.b)].span;
    const Span broken{note.middle(), note.middle() + Seconds(0.03)};
    set(pair.b.level, broken, -25);
    for (auto f = nearest_frame(broken.start).value; f < nearest_frame(broken.end).value; ++f)
        pair.b.f0.set(static_cast<std::size_t>(f), std::nullopt);
    CHECK(beside_key(pair).empty());
    set(pair.b.level, broken, -34);
    check_one(pair, crack, 1, note);
}

TEST_CASE("a vowel that is more open than the two voices differ by throughout is told") {
    Alike pair(546);
    for (marks::Note& n : pair.a.notes)
        n.vowel = marks::Vowel{Hertz(500), Hertz(1500), "e"};
    for (marks::Note& n : pair.b.notes) // a shorter tract
        n.vowel = marks::Vowel{Hertz(570), Hertz(1700), "e"};
    CHECK(beside_key(pair).empty());
    const std::size_t at = held_note(pair.b);
    pair.b.notes[at].vowel->f1 = Hertz(570 * 1.5);
    check_one(pair, vowel, 12 * std::log2(1.5), pair.b.notes[at].span);
    CHECK(beside_key(pair)[0].sentence.find("more open") != std::string::npos);
}

TEST_CASE("a breathier line is told when cepstral peak and first harmonic both say so") {
    Alike pair = filled(547, 0);
    const Span line = pair.b.phrases[3].span;
    set(pair.b.cpp, line, 5);
    CHECK(beside_key(pair).empty());
    set(pair.b.h1h2, line, 9);
    check_one(pair, closure, -5, line);
}

TEST_CASE("more ring over all is told in the same key, and not where the key alone may make it") {
    Alike pair = filled(548, 0);
    fill(pair.b, -22, 10, 5, -12);
    const auto all = beside_key(pair);
    REQUIRE(all.size() == 1);
    CHECK(all[0].kind == ring);
    CHECK(all[0].size == Approx(8));
    CHECK_FALSE(all[0].a);
    Alike higher = filled(548, 7);
    fill(higher.b, -22, 10, 5, -12);
    CHECK(beside_key(higher).empty());
}

TEST_CASE("a wider range of level is told over all") {
    Alike pair(549);
    for (Side* side : {&pair.a, &pair.b})
        for (std::size_t i = 0; i < side->notes.size(); ++i)
            side->notes[i].level = Decibels(i % 2 == 0 ? -20 : side == &pair.a ? -23 : -29);
    const auto all = beside_key(pair);
    REQUIRE(all.size() == 1);
    CHECK(all[0].kind == level_range);
    CHECK(all[0].size == Approx(6));
}

TEST_CASE("a word is named where both performances have the same one there, else the time is") {
    const auto word = [](const char* text, double at) {
        project::SungWord out;
        out.text = text, out.at = Seconds(at);
        return out;
    };
    Wording w;
    w.words_a = {word("gone", 1.0), word("away", 2.0)};
    CHECK(on_text(w, {Seconds(2), Seconds(3)}, {Seconds(4), Seconds(5)}) == "on 'away'");
    w.words_b = {word("gone", 3.0), word("away", 4.0)};
    CHECK(on_text(w, {Seconds(2), Seconds(3)}, {Seconds(4), Seconds(5)}) == "on 'away'");
    CHECK(after_text(w, Seconds(1.9), Seconds(3.9)) == "after 'gone'");
    w.words_b = {word("has", 3.0), word("gone", 4.0)};
    CHECK(on_text(w, {Seconds(2), Seconds(3)}, {Seconds(4), Seconds(5)}).starts_with("at "));
    CHECK(line_text(w, {Seconds(2), Seconds(3)}, {Seconds(4), Seconds(5)}).starts_with("in the line at "));
}
