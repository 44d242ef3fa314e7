// What two performances are aligned by: a column of features for each stretch of time.
#pragma once

#include "compare/side.h"

#include <vector>

namespace luft::compare {

/// Features free of tuning: pitch classes count from the performance's own A4. Free of key after `turn`.
struct Column {
    PitchClasses sung{};    ///< of the sung pitch, length 1; zero where nobody sings
    float voiced = 0;       ///< share of the column in which somebody sings
    float onset = 0;        ///< 1 where a note has just begun, dying away
    bool sounds = false;    ///< `harmony` is known here
    PitchClasses harmony{}; ///< length 1
};

struct Columns {
    Seconds start;
    Seconds hop; ///< column i covers start + i x hop to start + (i + 1) x hop
    std::vector<Column> all;
};

/// A sung pitch is spread over its neighbouring classes as a bell of half a semitone (own value), so that
/// intonation and vibrato cost little and a semitone costs 0.63. A note's beginning dies away with 0.1 s, as
/// the decaying onset features of Ewert, Müller & Grosche 2009 (ICASSP) do; columns longer than 0.1 s have
/// none.
Columns columns_of(const Side& side, Span part, Seconds hop);

/// Pitch classes moved down by so many semitones.
void turn(Columns& columns, int semitones);

/// How unlike two columns are, 0 to 1. Where both sing, 1 minus the cosine of their pitch classes (Müller
/// 2015, section 4.1.2); where one sings and the other doesn't, most of 1; where neither sings, the harmony's
/// where both have it, and a little otherwise: silence says little.
float unlikeness(const Column& a, const Column& b);

} // namespace luft::compare
