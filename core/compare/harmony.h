// What sounds, as twelve pitch classes over time.
#pragma once

#include "base/progress.h"
#include "base/samples.h"

#include <array>
#include <vector>

namespace luft::compare {

/// Strength of the twelve pitch classes, C first, as a vector of length 1; all zero where next to nothing
/// sounds.
using PitchClasses = std::array<float, 12>;

/// One value every 100 ms, centred at i x 100 ms.
struct Harmony {
    std::vector<PitchClasses> columns;
};

inline constexpr Seconds kHarmonyHop{0.1};

/// Chroma with logarithmic compression (Müller 2015, Fundamentals of Music Processing, sections 3.1.1
/// and 3.1.2.1): log(1 + 100 x power share), summed by pitch class from 55 to 2000 Hz against the given
/// tuning, over Hann frames of 341 ms; a frame 60 dB under the loudest one so far counts as silent. The voice
/// is in it as well. Reads the source once from time 0; memory grows with the columns only (1.7 MB an hour).
/// Throws as the source does, Stopped when told to stop.
Harmony hear_harmony(SampleSource& source, Hertz tuning, const Progress& progress = {});

} // namespace luft::compare
