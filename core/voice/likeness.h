// How much a pitch among instruments looks like the singer's.
#pragma once

#include "voice/claims.h"
#include "voice/pitch_track.h"

#include <array>
#include <functional>
#include <span>
#include <vector>

namespace luft::voice {

/// What speaks for a candidate being sung, in this order. All but the two marked are means over its pitch
/// contour within 0.25 s to either side; levels are against the recording's loud frames.
/// -  0 constant 1
/// -  1 salience against the frame's strongest
/// -  2 level of its partials, dB; 3 the same in the frame itself *
/// -  4 level at 1.5 to 4 kHz against all, dB
/// -  5 what stands between its partials, dB (Claim::between)
/// -  6 sign of a tone an octave lower, dB (Claim::sub_octave); 7 its part over 7 dB
/// -  8 how far odd partials stand out, dB (Claim::odd); 9 how far that is under 10 dB
/// - 10 log of (spread of the pitch in cents + 2); 11 log of (its mean step from frame to frame in cents +
/// 1):
///      instruments hold their pitch, voices don't
/// - 12 pitch in octaves from A4 = 440 Hz *; 13 its square
inline constexpr std::size_t kLikenessFeatures = 14;
using LikenessFeatures = std::array<float, kLikenessFeatures>;

/// Calls with each candidate's place in `lattice.all()` and its features, contour by contour. `lattice` holds
/// saliences, `claims` one a candidate.
void for_each_candidate(const Lattice& lattice, std::span<const Claim> claims,
                        const std::function<void(std::size_t candidate, const LikenessFeatures&)>& call);

/// Level of the recording's loud frames, dB: the 90th percentile of what each frame's strongest candidate
/// has.
double loud_level(const Lattice& lattice, std::span<const Claim> claims);

/// Log odds against 'nobody sings', one a candidate in the order of `lattice.all()`. Pitch contours are told
/// apart by their features (after Salamon & Gomez 2012, section II.C) with trained weights (as Bittner,
/// Salamon, Essid, Bello 2015), here of a conditional logit (McFadden 1974): the candidates of a frame and
/// 'nobody' compete. The weights are what tests/bench/learn prints for the benchmark's tuning songs over
/// bands.
std::vector<float> voice_likeness(const Lattice& lattice, std::span<const Claim> claims);

} // namespace luft::voice
