// The metric itself, on an example worked out by hand from MIREX's published rules.
#include "reference/note_metric.h"

#include <catch2/catch.hpp>

#include <array>

using namespace luft::reference;

TEST_CASE("the note metric gives the numbers of the example worked out by hand") {
    constexpr std::array<TimedNote, 4> kTruth{
        {{0, .5, 220}, {.5, 1, 246.942}, {1, 2, 261.626}, {2.2, 2.4, 293.665}}};
    constexpr std::array<TimedNote, 5> kSaid{
        {{.03, .48, 221}, {.56, 1, 246.942}, {1.04, 1.85, 262.5}, {2.2, 2.46, 302.5}, {3, 3.2, 220}}};
    const auto onset = score_notes(kTruth, kSaid, NoteRule::onset);
    CHECK(onset.hits == 3);
    CHECK(onset.precision() == Approx(0.6));
    CHECK(onset.recall() == Approx(0.75));
    CHECK(onset.f() == Approx(0.6667).margin(0.0001));
    // The fourth note is 51.3 cents sharp; the third is 150 ms short, inside 20 % of its second.
    for (const NoteRule rule : {NoteRule::onset_pitch, NoteRule::onset_pitch_offset}) {
        const auto score = score_notes(kTruth, kSaid, rule);
        CHECK(score.hits == 2);
        CHECK(score.precision() == Approx(0.4));
        CHECK(score.recall() == Approx(0.5));
        CHECK(score.f() == Approx(0.4444).margin(0.0001));
    }
}

TEST_CASE("the note metric counts exactly 50 ms as a hit, and each note once") {
    const auto hits = [](double said) {
        const std::array<TimedNote, 1> truth{{{1, 2, 220}}}, found{{{said, 2, 220}}};
        return score_notes(truth, found, NoteRule::onset).hits;
    };
    CHECK(hits(1.05) == 1);
    CHECK(hits(0.95) == 1);
    CHECK(hits(1.0502) == 0);
    const std::array<TimedNote, 1> one{{{1, 2, 220}}};
    const std::array<TimedNote, 3> many{{{1.0, 2, 220}, {1.01, 2, 220}, {1.02, 2, 220}}};
    CHECK(score_notes(one, many, NoteRule::onset).hits == 1);
    // A greedy match would give the first truth the found note that the second needs.
    const std::array<TimedNote, 2> truth{{{1.00, 2, 220}, {1.04, 2, 220}}},
        found{{{1.02, 2, 220}, {0.96, 2, 220}}};
    CHECK(score_notes(truth, found, NoteRule::onset).hits == 2);
}
