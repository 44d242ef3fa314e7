// What a lossy codec does to sound.
#pragma once

#include "base/units.h"

#include <span>
#include <vector>

namespace luft::bench {

/// The samples after AAC at that rate: written and read by core/media. As long as they were, encoder delay
/// taken out.
std::vector<float> through_aac(std::span<const float> samples, int channels, SampleRate rate, int kbps);

} // namespace luft::bench
