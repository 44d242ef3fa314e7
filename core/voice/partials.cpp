#include "voice/partials.h"

#include "voice/spectrum.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {

void measure_partials(std::span<const float> power, Hertz f0, Partials& into) {
    constexpr double kTop = 5000;
    constexpr int kMost = 40;
    into.f0 = f0;
    into.levels.clear();
    for (int h = 1; h <= kMost && h * f0.value() < kTop; ++h) {
        const double place = h * f0.value() / Spectrum::kBinWidth;
        const double reach = std::min(0.5 + 0.015 * place, 0.35 * f0.value() / Spectrum::kBinWidth);
        const auto lo = static_cast<std::size_t>(std::max(1.0, std::ceil(place - reach)));
        const auto hi = std::min(static_cast<std::size_t>(std::max(place + reach, static_cast<double>(lo))),
                                 power.size() - 2);
        std::size_t top = lo;
        for (std::size_t k = lo; k <= hi; ++k)
            if (power[k] > power[top]) top = k;
        const double l = power_level(power[top - 1]).value();
        const double c = power_level(power[top]).value();
        const double r = power_level(power[top + 1]).value();
        const double bend = l - 2 * c + r;
        double level = c;
        if (bend < 0 && c >= l && c >= r) {
            const double shift = std::clamp(0.5 * (l - r) / bend, -0.5, 0.5);
            level = c - 0.25 * (l - r) * shift;
        }
        into.levels.push_back(static_cast<float>(level));
    }
}

Decibels level_of(const Partials& partials) {
    double sum = 0;
    for (const float level : partials.levels)
        sum += std::pow(10.0, level / 10);
    return power_level(sum);
}

} // namespace luft::voice
