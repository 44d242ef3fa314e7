// Plain measures for checking the singer, written apart from the ear.
#pragma once

#include "base/units.h"

#include <cmath>
#include <complex>
#include <numbers>
#include <span>
#include <vector>

namespace luft::singer {

inline std::span<const float> cut(std::span<const float> x, SampleRate rate, Span s) {
    const auto a = static_cast<std::size_t>(s.start.value() * rate.per_second);
    const auto b = std::min(x.size(), static_cast<std::size_t>(s.end.value() * rate.per_second));
    return x.subspan(a, b - a);
}

inline Decibels rms(std::span<const float> x) {
    double p = 0;
    for (const float v : x)
        p += double(v) * v;
    return power_level(p / static_cast<double>(x.size()));
}

/// Pitch by the highest peak of the normalised autocorrelation within a fifth of `near`, refined by a
/// parabola.
inline Hertz pitch_near(std::span<const float> x, SampleRate rate, Hertz near) {
    const int low = static_cast<int>(rate.per_second / near.value() / 1.5);
    const int high = static_cast<int>(rate.per_second / near.value() * 1.5) + 1;
    const auto at = [&](int lag) {
        double xy = 0, xx = 0, yy = 0;
        for (std::size_t i = 0; i + static_cast<std::size_t>(high) + 1 < x.size(); ++i) {
            const double a = x[i], b = x[i + static_cast<std::size_t>(lag)];
            xy += a * b, xx += a * a, yy += b * b;
        }
        return xy / std::sqrt(xx * yy + 1e-30);
    };
    int best = low;
    double most = -2;
    for (int lag = low; lag <= high; ++lag)
        if (const double r = at(lag); r > most) most = r, best = lag;
    const double a = at(best - 1), c = at(best + 1);
    return Hertz(rate.per_second / (best + 0.5 * (a - c) / (a - 2 * most + c)));
}

/// Magnitude of one frequency, under a Hann window.
inline double line(std::span<const float> x, SampleRate rate, Hertz f) {
    const std::complex<double> turn = std::polar(1.0, -2 * std::numbers::pi * f.value() / rate.per_second);
    std::complex<double> z = 1, sum = 0;
    for (std::size_t i = 0; i < x.size(); ++i, z *= turn)
        sum += z * double(x[i]) * (0.5 - 0.5 * std::cos(2 * std::numbers::pi * double(i) / double(x.size())));
    return std::abs(sum) * 4 / static_cast<double>(x.size());
}

} // namespace luft::singer
