// The pitch trackers of libaubio, an independent library, for comparison.
#pragma once

#include "base/curve.h"

#include <span>
#include <string>

namespace luft::voice::test {

/// Pitch every 10 ms by aubio's `method` ("yinfft", "yin") with its own usual settings and a buffer of 2048
/// samples, at frame i's own time as the middle of the buffer `ahead` hops later. Aubio always guesses; where
/// it has no guess there is none. The rate must be 44.1 kHz.
Curve<Hertz> aubio_pitch(std::span<const float> samples, const std::string& method, int ahead);

} // namespace luft::voice::test
