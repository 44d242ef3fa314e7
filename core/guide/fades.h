// The short fades that keep a cut from clicking.
#pragma once

#include "base/units.h"

#include <cstdint>
#include <span>

namespace luft::guide {

/// Long enough not to click, too short to be heard as a fade. Common practice, no source.
inline constexpr Seconds kCutFade{0.003};

/// Fades the edges of a passage of `length` samples by a raised cosine over `ramp` samples. `stereo` is the
/// part of it that begins at `position`.
void fade_edges(std::span<float> stereo, std::int64_t position, std::int64_t length, std::int64_t ramp);

} // namespace luft::guide
