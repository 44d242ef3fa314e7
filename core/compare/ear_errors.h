// How far two hearings of the same singing are apart, and what is beyond it.
#pragma once

#include "compare/side.h"

#include <optional>

namespace luft::compare {

/// Standard errors of a difference between two hearings, as measured by
///     build/bin/test_compare "[errors]"
/// on twelve songs (seeds 951 to 962), each heard twice through different noise, between notes that both
/// hearings give 0.7 and more: half of what 95 % of the differences stay under or a third of what 99 % do,
/// the larger one, so that long tails count (for pitch the former: the rest are other notes).
struct EarErrors {
    Cents tuning;
    Cents pitch;
    Seconds start;
    Decibels level;        ///< of a note against the median note
    Decibels level_change; ///< through a held note
    Hertz vibrato_rate;
    Cents vibrato_extent;
    double onset = 0; ///< probability that two hearings of one note give two kinds, both sure of it
    double offset = 0;
    double sung_in = 0;     ///< that two hearings give a note two registers
    bool registers = false; ///< whether registers can be compared at all
    double breath = 0;      ///< that a breath given 0.8 and more is none
    double lone_note = 0;   ///< that a note given 0.7 and more is missing in the other hearing
    Cents scoop, drift;
    Decibels level_range; ///< 10th to 90th percentile of the notes both sing
    double crack = 0;     ///< that a plain crack is heard in one hearing and nothing like it in the other
    bool colours = false; ///< whether drift, vowel, closure and ring can be compared at all
};

/// Of vowel, closure and ring, voices alone: as measured by
///     build/bin/test_compare "how much two hearings*,how much the same notes*"
/// on the same seeds. Formants and partials go by where the partials lie, so that another key is less sure:
/// the worst of noise, rooms and another voice of the same type in the same key; of 3 semitones higher, up to
/// 4 apart; of an alto 7 semitones higher, beyond. Formants twice that, since their errors have long tails:
/// on seeds 1101 to 1118, some vowels still stood out beyond three times what was measured.
struct ColourErrors {
    double f1 = 0, f2 = 0; ///< semitones; of a note, the median difference of all notes taken out, as below
    Decibels cpp, h1h2;
    std::optional<Decibels> ring;               ///< none in another key, where each partial stands elsewhere
    std::optional<Decibels> all_h1h2, all_ring; ///< of that median; none where key and voice alone make it
};
ColourErrors colour_errors(int semitones);

EarErrors errors_between(voice::Setting a, voice::Setting b);

/// The rule for sizes: at least three times the error, and at least `least`, under which no teacher would
/// speak of it. The confidence is 1 minus the two-sided normal probability of such a size by error alone.
std::optional<Confidence> beyond_error(double size, double error, double least);

/// The rule for what is counted: under 1 in 100 by chance.
inline constexpr double kByChance = 0.01;

/// Probability that something of probability `p` happens `times` or more often in `of` (binomial).
double by_chance(int times, int of, double p);

/// Two-sided sign test (Conover 1999, Practical Nonparametric Statistics, section 3.4): probability that of
/// so many differences as many point one way as `more`, or fewer the other way.
double sign_test(int one_way, int other_way);

} // namespace luft::compare
