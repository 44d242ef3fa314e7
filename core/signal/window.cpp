#include "signal/window.h"

#include <cmath>
#include <numbers>

namespace luft::signal {

std::vector<float> hann(std::size_t n) {
    std::vector<float> w(n);
    for (std::size_t i = 0; i < n; ++i)
        w[i] = static_cast<float>(
            0.5 - 0.5 * std::cos(2 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(n)));
    return w;
}

} // namespace luft::signal
