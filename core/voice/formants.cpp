#include "voice/formants.h"

#include "signal/linear_prediction.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::voice {
namespace {

constexpr int kOrder = 10;
constexpr std::size_t kGrid = 128;
constexpr SampleRate kModelRate{11000}; // twice the highest frequency modelled
constexpr double kStep = 5500.0 / kGrid;

} // namespace

FormantFinder::FormantFinder() {
    for (int m = 0; m <= kOrder; ++m)
        for (std::size_t k = 0; k <= kGrid; ++k)
            cosines_.push_back(std::cos(std::numbers::pi * m * static_cast<double>(k) / kGrid));
}

std::optional<Formants> FormantFinder::find(const Partials& partials) const {
    if (partials.f0 > kHighestForFormants || partials.levels.size() < 6) return std::nullopt;
    const auto& levels = partials.levels;
    std::vector<double> power(kGrid + 1);
    for (std::size_t k = 0; k <= kGrid; ++k) {
        const double f = static_cast<double>(k) * kStep;
        const double place = f / partials.f0.value() - 1; // index into levels
        double level = 0;
        if (place <= 0) {
            level = levels.front();
        } else if (place >= static_cast<double>(levels.size() - 1)) {
            level = levels.back();
        } else {
            const auto i = static_cast<std::size_t>(place);
            level = levels[i] + (place - static_cast<double>(i)) * (levels[i + 1] - levels[i]);
        }
        const double tilt = 20 * std::log10(std::max(f, partials.f0.value()) / 500);
        power[k] = std::pow(10.0, (level + tilt) / 10);
    }
    std::vector<double> autocorrelation(kOrder + 1, 0.0);
    for (std::size_t m = 0; m <= kOrder; ++m)
        for (std::size_t k = 0; k <= kGrid; ++k) {
            const double end = k == 0 || k == kGrid ? 0.5 : 1.0;
            autocorrelation[m] += end * power[k] * cosines_[m * (kGrid + 1) + k];
        }
    if (autocorrelation[0] <= 0) return std::nullopt;
    autocorrelation[0] *= 1 + 1e-6; // keeps the recursion stable on pure tones
    const auto poles = signal::resonances(signal::levinson(autocorrelation, kOrder), kModelRate);

    std::vector<Hertz> formants;
    for (const auto& pole : poles)
        if (pole.bandwidth < Hertz(500) && pole.frequency > Hertz(180)) formants.push_back(pole.frequency);
    if (formants.size() < 2 || formants[0] > Hertz(1100) || formants[1] < Hertz(550) ||
        formants[1] > Hertz(3000))
        return std::nullopt;
    Formants found{formants[0], formants[1], std::nullopt};
    if (formants.size() > 2) found.f3 = formants[2];
    return found;
}

} // namespace luft::voice
