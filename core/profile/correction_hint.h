// Was the pitch corrected after it was sung? A hint from how pitch spreads and moves.
#pragma once

#include "profile/material.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::profile {

/// How tightly the pitch of a performance is held. Each figure is none where too little speaks.
struct PitchSteadiness {
    /// Spread of the notes' cents against the performance's tuning: 10th to 90th percentile as a standard
    /// deviation. Notes of 0.2 s and more; 20 at least.
    std::optional<double> centre_cents;
    /// How far the pitch strays inside a note without vibrato, from its 10th to its 90th percentile, smoothed
    /// over 90 ms, without its first and last fifth (0.1 s at least); the median over notes of 0.36 s and
    /// more, 6 at least.
    std::optional<double> stray_cents;
    /// Time from 10 % to 90 % of the step between joined notes, 1 to 12 semitones apart; the median of 10
    /// at least. The pitch curve shows a step of 15 ms as 20 to 35 ms.
    std::optional<Seconds> step_time;
    int notes = 0, held = 0, steps = 0; ///< that they rest on
};

PitchSteadiness pitch_steadiness(const Material& m);

/// Borders under which a sign speaks.
/// - Centre: singers' notes lie much further off. Median distance from the written note 19 cents over 24
///   singers (Mauch, Frieler & Dixon 2014, JASA 136(1) 401): as a normal spread that is 28 cents; trained
///   singers 10 to 20 (common practice, no source).
/// - Stray: a held note without vibrato still wavers by several cents (common practice, no source); the
/// border is tuned on songs 1500 to 1509 of tests/profile/correction_test.cpp, where singers show 2.7 to 5.1.
/// - Step: the fastest voluntary change of pitch takes 90 ms and more from beginning to end (Xu & Sun 2002,
///   JASA 111(3) 1399: 89.6 + 8.7 d ms upwards, d in semitones; from memory, unchecked); from 10 % to 90 %
///   that is near 55 ms.
inline constexpr double kPinnedCentre = 5;
inline constexpr double kFlatStray = 2.5;
inline constexpr Seconds kQuickStep{0.040};
/// Steps come out sharper where the pitch is followed among instruments (tests/profile/correction_test.cpp).
inline constexpr Seconds kQuickStepAccompanied{0.028};

/// Two signs that speak, or three. Never a finding: a very accurate singer with quick, clean steps, or a
/// singing machine, looks the same; and corrected singing that was left its glides and wavering isn't seen at
/// all. None when fewer than two signs speak or fewer than 20 notes could be measured.
std::optional<FacetHint> correction_hint(const Material& m);

} // namespace luft::profile
