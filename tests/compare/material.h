// Pieces by chance, performed twice: what is aligned, with every note's true place known.
#pragma once

#include "compare/align.h"
#include "compare/counterparts.h"

#include <cstdint>
#include <vector>

namespace luft::compare::test {

struct ScoreNote {
    int id = 0;    ///< unlike every other note's of the piece
    double at = 0; ///< beats from its phrase's start
    double beats = 1;
    int pitch = 60;
};

struct ScorePhrase {
    std::vector<ScoreNote> notes;
    double beats = 8; ///< with the rest at its end
};

/// Sections of four phrases each, in the order in which they are sung.
struct Score {
    std::vector<std::vector<ScorePhrase>> sections;
};

Score random_score(std::uint64_t seed, int sections);

/// How it is performed.
struct Manner {
    std::uint64_t seed = 1;
    double speed = 1;  ///< of 120 beats a minute
    double rubato = 0; ///< standard deviation of log tempo from phrase to phrase, and swing within one
    int semitones = 0;
    Cents tuning{0};                ///< against A4 = 440 Hz
    std::vector<int> sections = {}; ///< which, in order; empty = all
    Seconds silence{0.5};           ///< before the first note
    Seconds talk{0};                ///< spoken before it, with notes that the ear takes talk for
    Seconds interlude{0};           ///< silence between the second section and the third
    double missed = 0;              ///< share of notes that the ear doesn't hear, at random
    double octave_slips = 0;        ///< share of notes heard an octave off
    double ornaments = 0;           ///< share of long notes that are sung with a turn
    Seconds unsure{0.015};          ///< standard deviation of each mark's time
};

struct PlacedNote {
    int id = -1;    ///< -1: an ornament, or talk
    Span span;      ///< true
    int heard = -1; ///< index of Side::notes
};

struct Performed {
    Side side;
    std::vector<PlacedNote> notes;
    Span talk;
    std::vector<Span> sections; ///< in the order as sung
};

/// As ideal curves and marks with a real ear's faults: 25 cents of wander and vibrato on long notes.
Performed perform(const Score& score, const Manner& manner);

/// The true notes with, for each, the note of the ear's that begins within 0.1 s of it; numbered by `ids`, or
/// in their order where none are given.
std::vector<PlacedNote> placed(const std::vector<Span>& notes, const std::vector<int>& ids, const Side& side);

/// Errors of A's note starts carried to B, over all notes that both sing.
struct Errors {
    int shared = 0, lost = 0; ///< notes of both; of them, those for which the alignment says there is none
    double median_ms = 0, p95_ms = 0;
    std::vector<double> all_ms; ///< each one's
    double right_pairs = 0;     ///< of the notes that both have heard, share paired with each other
    double wrong_pairs = 0;     ///< of all pairs, share whose notes aren't the same
};
Errors errors_of(const Performed& a, const Performed& b, const Alignment& alignment);

} // namespace luft::compare::test
