#include "voice/closure.h"

#include "voice/spectrum.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::voice {
namespace {

/// Magnitude response of a two-pole resonance at `f`, in dB against 0 Hz.
double resonance_gain(double f, double centre, double bandwidth) {
    const double fs = kEarRate.per_second;
    const double r = std::exp(-std::numbers::pi * bandwidth / fs);
    const double w0 = 2 * std::numbers::pi * centre / fs;
    const auto squared = [&](double w) {
        return (1 - 2 * r * std::cos(w - w0) + r * r) * (1 - 2 * r * std::cos(w + w0) + r * r);
    };
    return 10 * std::log10(squared(0) / squared(2 * std::numbers::pi * f / fs));
}

} // namespace

CepstralPeak::CepstralPeak() : fft_(kFrameSamples), cepstrum_(kFrameSamples / 2 + 1, 0.0F) {}

std::optional<Decibels> CepstralPeak::prominence(std::span<const float> power, Hertz f0) {
    auto x = fft_.samples();
    const std::size_t half = kFrameSamples / 2;
    for (std::size_t k = 0; k <= half; ++k)
        x[k] = static_cast<float>(power_level(power[k]).value());
    for (std::size_t k = 1; k < half; ++k)
        x[kFrameSamples - k] = x[k];
    fft_.forward();
    const auto spectrum = fft_.spectrum();
    for (std::size_t q = 0; q <= half; ++q)
        cepstrum_[q] =
            static_cast<float>(20 * std::log10(std::abs(spectrum[q].real()) / kFrameSamples + 1e-6));

    const double period = kEarRate.per_second / f0.value();
    const auto lo = static_cast<std::size_t>(std::max(2.0, std::floor(period * 0.94)));
    const auto hi = std::min(static_cast<std::size_t>(std::ceil(period * 1.06)), half - 1);
    if (lo > hi) return std::nullopt;
    const auto top = std::max_element(cepstrum_.begin() + static_cast<std::ptrdiff_t>(lo),
                                      cepstrum_.begin() + static_cast<std::ptrdiff_t>(hi) + 1);
    // The line, by least squares from 1 ms to 25 ms.
    constexpr std::size_t kFrom = 24, kTo = 600;
    double n = 0, sx = 0, sy = 0, sxx = 0, sxy = 0;
    for (std::size_t q = kFrom; q <= kTo; ++q) {
        const double qx = static_cast<double>(q), y = cepstrum_[q];
        n += 1;
        sx += qx;
        sy += y;
        sxx += qx * qx;
        sxy += qx * y;
    }
    const double slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
    const double base = (sy - slope * sx) / n;
    const auto place = static_cast<double>(top - cepstrum_.begin());
    return Decibels(*top - (base + slope * place));
}

std::optional<Decibels> harmonics_to_noise(std::span<const float> frame, Hertz f0) {
    constexpr std::size_t kWindow = 1024;
    const double period = kEarRate.per_second / f0.value();
    const auto lo = static_cast<std::size_t>(std::max(2.0, std::floor(period * 0.98)));
    const auto hi = static_cast<std::size_t>(std::ceil(period * 1.02));
    if (hi + kWindow > frame.size()) return std::nullopt;
    const std::size_t start = (frame.size() - kWindow - static_cast<std::size_t>(period)) / 2;
    const auto x = frame.subspan(start);
    double energy0 = 0;
    for (std::size_t i = 0; i < kWindow; ++i)
        energy0 += static_cast<double>(x[i]) * x[i];
    double best = 0;
    for (std::size_t lag = lo; lag <= hi && lag + kWindow <= x.size(); ++lag) {
        double product = 0, energy = 0;
        for (std::size_t i = 0; i < kWindow; ++i) {
            product += static_cast<double>(x[i]) * x[i + lag];
            energy += static_cast<double>(x[i + lag]) * x[i + lag];
        }
        if (energy0 > 0 && energy > 0) best = std::max(best, product / std::sqrt(energy0 * energy));
    }
    const double r = std::clamp(best, 0.0099, 0.9999);
    return Decibels(10 * std::log10(r / (1 - r)));
}

std::optional<Decibels> first_minus_second(const Partials& partials, std::optional<Hertz> f1) {
    if (partials.levels.size() < 2) return std::nullopt;
    double difference = partials.levels[0] - partials.levels[1];
    if (f1) {
        constexpr double kBandwidth = 80; // usual for F1 (Klatt 1980: 50 to 130 Hz)
        difference -= resonance_gain(partials.f0.value(), f1->value(), kBandwidth) -
                      resonance_gain(2 * partials.f0.value(), f1->value(), kBandwidth);
    }
    return Decibels(difference);
}

} // namespace luft::voice
