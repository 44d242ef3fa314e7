#include "voice/pulse_shape.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace luft::voice {
namespace {

using std::numbers::pi;

/// One cycle of length 1: a growing sine until `te`, then a decay back to 0.
struct Pulse {
    double tp, te, ta, growth, decay, scale;

    [[nodiscard]] double at(double t) const {
        if (t < te) return scale * std::exp(growth * t) * std::sin(pi * t / tp);
        return -(std::exp(-decay * (t - te)) - std::exp(-decay * (1 - te))) / (decay * ta);
    }
};

/// Area under the sine that grows at this rate and ends at -1.
double open_area(double growth, double te, double w) {
    const double s = std::sin(w * te), c = std::cos(w * te);
    return -(growth * s - w * c + w * std::exp(-growth * te)) / ((growth * growth + w * w) * s);
}

Pulse pulse_of(double rd) {
    const double ra = (-1 + 4.8 * rd) / 100, rk = (22.4 + 11.8 * rd) / 100;
    const double rg = rk / (4 * (0.11 * rd / (0.5 + 1.2 * rk) - ra));
    Pulse p{};
    p.tp = 1 / (2 * rg);
    p.te = p.tp * (1 + rk);
    p.ta = ra;
    const double rest = 1 - p.te, w = pi / p.tp;
    p.decay = 1 / p.ta;
    for (int i = 0; i < 100; ++i) // decay x ta = 1 - exp(-decay x rest), by iteration
        p.decay = (1 - std::exp(-p.decay * rest)) / p.ta;
    const double tail = std::exp(-p.decay * rest);
    const double closing = -((1 - tail) / p.decay - rest * tail) / (p.decay * p.ta);
    double low = -200, high = 200; // flow ends where it began: the areas cancel
    for (int i = 0; i < 60; ++i) {
        p.growth = (low + high) / 2;
        (open_area(p.growth, p.te, w) + closing > 0 ? low : high) = p.growth;
    }
    p.scale = -1 / (std::exp(p.growth * p.te) * std::sin(w * p.te));
    return p;
}

} // namespace

std::vector<float> pulse_levels(double rd, int count) {
    const Pulse pulse = pulse_of(std::clamp(rd, 0.3, 2.7));
    constexpr int kPoints = 1024;
    std::vector<std::complex<double>> sums(static_cast<std::size_t>(count));
    for (int i = 0; i < kPoints; ++i) {
        const double flow = pulse.at(static_cast<double>(i) / kPoints);
        const auto step = std::polar(1.0, -2 * pi * i / kPoints);
        auto turn = step;
        for (auto& sum : sums) {
            sum += flow * turn;
            turn *= step;
        }
    }
    std::vector<float> levels;
    for (const auto& sum : sums)
        levels.push_back(static_cast<float>(20 * std::log10(std::abs(sum) + 1e-12)));
    return levels;
}

} // namespace luft::voice
