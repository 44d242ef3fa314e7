// Single frames for the measures that work on one.
#pragma once

#include "scenes/tones.h"
#include "voice/front.h"

#include <catch2/catch.hpp>

namespace luft::voice::test {

inline const Seconds kFrameLength{static_cast<double>(kFrameSamples) / kEarRate.per_second};

/// The samples as a frame of a mono recording; they must be kFrameSamples and outlive it.
inline Frame frame_of(std::span<const float> samples) {
    REQUIRE(samples.size() == kFrameSamples);
    return {{0}, samples, {}, samples.subspan(kFrameSamples / 2, kHopSamples)};
}

} // namespace luft::voice::test
