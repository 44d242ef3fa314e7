#include "signal/linear_prediction.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace luft::signal {

std::vector<double> levinson(std::span<const double> r, int order) {
    const auto p = static_cast<std::size_t>(order);
    std::vector<double> a(p + 1, 0.0), next(p + 1, 0.0);
    a[0] = 1;
    double error = r[0];
    for (std::size_t i = 1; i <= p && error > 0; ++i) {
        double sum = r[i];
        for (std::size_t j = 1; j < i; ++j)
            sum += a[j] * r[i - j];
        const double k = -sum / error;
        next = a;
        next[i] = k;
        for (std::size_t j = 1; j < i; ++j)
            next[j] = a[j] + k * a[i - j];
        a = next;
        error *= 1 - k * k;
    }
    return a;
}

std::vector<Resonance> resonances(std::span<const double> a, SampleRate rate) {
    using Complex = std::complex<double>;
    const std::size_t p = a.size() - 1;
    // Start values spread on a circle inside the unit circle, off the real axis (Durand-Kerner's usual
    // choice).
    std::vector<Complex> z(p);
    for (std::size_t i = 0; i < p; ++i)
        z[i] = std::polar(
            0.9, 2 * std::numbers::pi * (static_cast<double>(i) + 0.25) / static_cast<double>(p) + 0.1);
    for (int round = 0; round < 60; ++round) {
        double moved = 0;
        for (std::size_t i = 0; i < p; ++i) {
            Complex value = 1;
            for (std::size_t j = 1; j <= p; ++j)
                value = value * z[i] + a[j];
            Complex others = 1;
            for (std::size_t j = 0; j < p; ++j)
                if (j != i) others *= z[i] - z[j];
            if (std::abs(others) < 1e-300) continue;
            const Complex step = value / others;
            z[i] -= step;
            moved = std::max(moved, std::abs(step));
        }
        if (moved < 1e-9) break;
    }
    std::vector<Resonance> found;
    const double fs = rate.per_second;
    for (const Complex& pole : z) {
        const double radius = std::abs(pole);
        if (pole.imag() <= 1e-6 || radius <= 0) continue;
        found.push_back({Hertz(std::arg(pole) * fs / (2 * std::numbers::pi)),
                         Hertz(-std::log(radius) * fs / std::numbers::pi)});
    }
    std::sort(found.begin(), found.end(),
              [](const Resonance& x, const Resonance& y) { return x.frequency < y.frequency; });
    return found;
}

} // namespace luft::signal
