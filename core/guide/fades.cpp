#include "guide/fades.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::guide {

void fade_edges(std::span<float> stereo, std::int64_t position, std::int64_t length, std::int64_t ramp) {
    for (std::size_t i = 0; i + 1 < stereo.size(); i += 2) {
        const std::int64_t at = position + static_cast<std::int64_t>(i / 2);
        const std::int64_t edge = std::min(at, length - 1 - at); // samples to the nearer edge
        if (edge >= ramp) continue;
        const double share = edge < 0 ? 0 : (static_cast<double>(edge) + 0.5) / static_cast<double>(ramp);
        const auto gain = static_cast<float>((1 - std::cos(std::numbers::pi * share)) / 2);
        stereo[i] *= gain;
        stereo[i + 1] *= gain;
    }
}

} // namespace luft::guide
