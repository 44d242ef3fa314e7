#include "marks/vibrato.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace luft::marks {
namespace {

constexpr double kSlowest = 3.5, kFastest = 9.0; // Hz; singers' range 3.5 (Peking opera) to 8.7 (Prame 1994)
constexpr double kLeastExtent = 20;              // cents
constexpr double kLeastRegularity = 0.45;
constexpr double kLeastCycles = 2.0;

struct Fit {
    double amplitude = 0;
    double explained = 0;
};

/// Least squares of a cos + b sin + c at one rate.
Fit fit_sine(std::span<const float> x, double rate) {
    double mean = 0;
    for (const float v : x)
        mean += v;
    mean /= static_cast<double>(x.size());
    double cc = 0, ss = 0, cs = 0, xc = 0, xs = 0, xx = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double phase = 2 * std::numbers::pi * rate * static_cast<double>(i) * kHop.value();
        const double c = std::cos(phase), s = std::sin(phase), v = x[i] - mean;
        cc += c * c;
        ss += s * s;
        cs += c * s;
        xc += v * c;
        xs += v * s;
        xx += v * v;
    }
    const double det = cc * ss - cs * cs;
    if (det <= 0 || xx <= 0) return {};
    const double a = (xc * ss - xs * cs) / det;
    const double b = (xs * cc - xc * cs) / det;
    return {std::hypot(a, b), (a * xc + b * xs) / xx};
}

} // namespace

std::optional<Vibrato> find_vibrato(std::span<const float> pitch) {
    // The ends hold the glides from and to the neighbours; vibrato sets in late.
    const std::size_t skip = std::min<std::size_t>(12, pitch.size() / 5);
    if (pitch.size() < 2 * skip + 24) return std::nullopt;
    std::vector<float> cents;
    for (const float p : pitch.subspan(skip, pitch.size() - skip - skip / 2))
        cents.push_back(100 * p);
    const auto drift = signal::running_mean(cents, 9);
    for (std::size_t i = 0; i < cents.size(); ++i)
        cents[i] -= drift[i];
    // At the ends the running mean follows the swing itself; those frames are left out.
    const std::size_t edge = std::min<std::size_t>(8, cents.size() / 6);
    auto middle = std::span<const float>(cents).subspan(edge, cents.size() - 2 * edge);
    if (middle.size() < 20) return std::nullopt;

    const auto best_in = [](std::span<const float> part) {
        std::pair<double, Fit> best{0, {}};
        for (double rate = kSlowest; rate <= kFastest; rate += 0.05) {
            const Fit fit = fit_sine(part, rate);
            if (fit.explained > best.second.explained) best = {rate, fit};
        }
        return best;
    };
    auto [rate, fit] = best_in(middle);
    // A vibrato that starts half-way is measured where it is.
    if (middle.size() >= 60) {
        const auto second = middle.subspan(middle.size() / 2);
        const auto later = best_in(second);
        if (later.second.explained > fit.explained + 0.1 && later.second.amplitude > kLeastExtent) {
            middle = second;
            rate = later.first;
            fit = later.second;
        }
    }
    // The running mean over 190 ms lets part of slow swings through: undo its gain at this rate.
    const double x = std::numbers::pi * rate * 19 * kHop.value();
    const double passed = 1 - std::sin(x) / (19 * std::sin(std::numbers::pi * rate * kHop.value()));
    // So does the pitch measurement itself, which sees 47 ms at a time (voice/yin.h): a mean over that window
    // scales a swing by sin(x) / x.
    constexpr double kPitchWindow = 0.047;
    const double seen = std::numbers::pi * rate * kPitchWindow;
    const double extent = fit.amplitude / std::max(passed, 0.5) * seen / std::sin(seen);
    const double cycles = rate * static_cast<double>(middle.size()) * kHop.value();
    if (fit.explained < kLeastRegularity || extent < kLeastExtent || cycles < kLeastCycles)
        return std::nullopt;
    return Vibrato{Hertz(rate), Cents(extent), std::clamp(fit.explained, 0.0, 1.0)};
}

} // namespace luft::marks
