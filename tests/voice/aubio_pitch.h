// The pitch trackers of libaubio, an independent library, for comparison.
#pragma once

#include "base/curve.h"

#include <span>
#include <string>

namespace luft::voice::test {

/// Pitch every 10 ms by aubio's `method` ("yinfft", "yinfast") with its own usual settings and a buffer of
/// 2048 samples that ends with the frame, so its middle lies some 23 ms before it. Aubio nearly always
/// guesses; where it doesn't there is none. The rate must be 44.1 kHz.
Curve<Hertz> aubio_pitch(std::span<const float> samples, const std::string& method);

} // namespace luft::voice::test
