#include "marks/breath_manner.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

double above(double x, double from, double unit) {
    return std::max(0.0, (x - from) / unit);
}

/// Bands that a breath fills (up to 9 kHz: over that, microphones and file formats differ), against the mean
/// of those up to 4.5 kHz.
constexpr std::size_t kFilled = 5, kCompared = 7;
NoiseShape freed_of_level(const NoiseShape& shape) {
    double sum = 0;
    for (std::size_t k = 0; k < kFilled; ++k)
        sum += shape[k];
    NoiseShape out = shape;
    for (float& level : out)
        level -= static_cast<float>(sum / kFilled);
    return out;
}

double hole_in(const NoiseShape& s) {
    const auto filled = std::span(s).first(kFilled);
    return *std::ranges::max_element(filled) - *std::ranges::min_element(filled.subspan(1));
}

} // namespace

double breath_logit(const NoiseEvent& e, const Gap& gap) {
    const double wait = gap.before_singing ? std::min(above(e.until.value(), 0.4, 0.3), 3.0)
                                           : 2.5; // after the last note the singer rather lets go
    return 1.2 - 1.6 * above(e.hiss, -2, 4) - 1.9 * above(e.hush, 8, 4) -
           2.3 * above(hole_in(e.shape), 14, 6) - 0.35 * above(e.low, -1, 3) - 0.9 * above(e.tonality, 4, 2) -
           2.4 * wait - 1.2 * above(8 - e.below, 0, 4) + 1.4 * std::clamp((e.rise - 4) / 3, -1.5, 1.0) +
           2.0 * std::clamp((e.fall - 4) / 3, -1.5, 1.0) +
           1.4 * std::min((e.length.value() - 0.12) / 0.1, 0.5);
}

std::optional<BreathManner> manner_of(std::span<const NoiseEvent> sure) {
    if (sure.size() < 3) return std::nullopt;
    BreathManner m;
    std::vector<NoiseShape> shapes;
    std::vector<double> below;
    for (const NoiseEvent& e : sure) {
        shapes.push_back(freed_of_level(e.shape));
        below.push_back(e.below);
    }
    for (std::size_t k = 0; k < kShapeBands; ++k) {
        std::vector<float> band;
        for (const NoiseShape& s : shapes)
            band.push_back(s[k]);
        m.shape[k] = static_cast<float>(signal::median(band).value_or(0));
    }
    m.below = signal::median(below).value_or(0);
    return m;
}

double likeness(const NoiseEvent& e, const BreathManner& manner) {
    const NoiseShape shape = freed_of_level(e.shape);
    double sum = 0;
    for (std::size_t k = 0; k < kCompared; ++k)
        sum += std::pow(shape[k] - manner.shape[k], 2);
    const double off = std::sqrt(sum / kCompared);
    return std::clamp((6 - off) / 2, -2.0, 1.0) -
           std::min(above(std::abs(e.below - manner.below), 10, 4), 2.0);
}

double calibrated(double sum) {
    return 2 * (sum - 0.85);
}

} // namespace luft::marks
