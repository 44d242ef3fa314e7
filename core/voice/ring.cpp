#include "voice/ring.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {

std::optional<Decibels> singing_power_ratio(const Partials& partials) {
    std::optional<float> low, high;
    for (std::size_t i = 0; i < partials.levels.size(); ++i) {
        const double f = static_cast<double>(i + 1) * partials.f0.value();
        auto& band = f < 2000 ? low : high;
        if (f <= 4000) band = std::max(band.value_or(-999.0F), partials.levels[i]);
    }
    if (!low || !high) return std::nullopt;
    return Decibels(*high - *low);
}

std::optional<Decibels> alpha_ratio(const Partials& partials) {
    double low = 0, high = 0;
    for (std::size_t i = 0; i < partials.levels.size(); ++i) {
        const double f = static_cast<double>(i + 1) * partials.f0.value();
        (f < 1000 ? low : high) += std::pow(10.0, partials.levels[i] / 10);
    }
    if (low <= 0 || high <= 0) return std::nullopt;
    return power_level(high / low);
}

std::optional<Hertz> centroid(const Partials& partials) {
    double sum = 0, weights = 0;
    for (std::size_t i = 0; i < partials.levels.size(); ++i) {
        const double p = std::pow(10.0, partials.levels[i] / 10);
        sum += static_cast<double>(i + 1) * partials.f0.value() * p;
        weights += p;
    }
    if (weights <= 0) return std::nullopt;
    return Hertz(sum / weights);
}

} // namespace luft::voice
