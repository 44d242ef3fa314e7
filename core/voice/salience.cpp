#include "voice/salience.h"

#include "voice/spectrum.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {
namespace {

constexpr double kGridCents = 20;
constexpr int kPartials = 12;
constexpr double kWeight = 0.65; // tuned on the sample's performances and the project's accompanied scenes
constexpr double kTop = 5000;    // Hz; above it a voice has too little to add

/// Bins that partials up to kTop read.
constexpr auto kBins = static_cast<std::size_t>(kTop / Spectrum::kBinWidth) + 2;

std::vector<float> pitch_grid() {
    std::vector<float> grid;
    const double steps = interval(kLowestPitch, kHighestPitch).value() / kGridCents;
    for (int i = 0; i <= static_cast<int>(steps); ++i)
        grid.push_back(static_cast<float>(kLowestPitch.value() * std::exp2(i * kGridCents / 1200)));
    return grid;
}

float at(std::span<const float> spectrum, double bin) {
    const auto i = static_cast<std::size_t>(bin);
    if (i + 1 >= spectrum.size()) return 0;
    const auto part = static_cast<float>(bin - static_cast<double>(i));
    return spectrum[i] + part * (spectrum[i + 1] - spectrum[i]);
}

} // namespace

Salience::Salience()
    : grid_(pitch_grid()), white_(Spectrum::kBins, 0.0F), sums_(Spectrum::kBins + 1, 0.0),
      salience_(grid_.size(), 0.0F) {}

void Salience::whiten(std::span<const float> power) {
    // The spectrum compressed to a quarter of its power in dB, and half of that again freed of its running
    // mean over a third of an octave or so: whitened in part only, so that the loudest source still stands
    // out.
    constexpr double kCompression = 0.25, kWhitening = 0.12;
    std::vector<double>& sums = sums_;
    sums[0] = 0;
    for (std::size_t k = 0; k < power.size(); ++k)
        sums[k + 1] = sums[k] + power[k];
    for (std::size_t k = 0; k < std::min(kBins, power.size()); ++k) {
        const std::size_t reach = std::max<std::size_t>(16, k / 4);
        const std::size_t lo = k > reach ? k - reach : 0;
        const std::size_t hi = std::min(power.size(), k + reach + 1);
        const double around = (sums[hi] - sums[lo]) / static_cast<double>(hi - lo) + 1e-12;
        white_[k] = static_cast<float>(
            std::exp2(kCompression * std::log2(power[k] + 1e-14) - kWhitening * std::log2(around)));
    }
}

std::span<const PitchCandidate> Salience::candidates(std::span<const float> power) {
    whiten(power);
    found_.clear();
    for (std::size_t g = 0; g < grid_.size(); ++g) {
        const double f0 = grid_[g];
        double sum = 0, weights = 0, weight = 1;
        for (int h = 1; h <= kPartials && h * f0 < kTop; ++h, weight *= kWeight) {
            const double bin = h * f0 / Spectrum::kBinWidth;
            sum += weight * at(white_, bin);
            weights += weight;
        }
        salience_[g] = static_cast<float>(sum / weights);
    }
    for (std::size_t g = 1; g + 1 < grid_.size(); ++g) {
        const float l = salience_[g - 1], c = salience_[g], r = salience_[g + 1];
        if (c <= l || c < r || c <= 0) continue;
        const float bend = l - 2 * c + r;
        const float shift = bend < 0 ? std::clamp(0.5F * (l - r) / bend, -0.5F, 0.5F) : 0.0F;
        found_.push_back({grid_[g] * static_cast<float>(std::exp2(shift * kGridCents / 1200)), c});
    }
    std::ranges::sort(found_, [](const auto& a, const auto& b) { return a.probability > b.probability; });
    if (found_.size() > kMost) found_.resize(kMost);
    return found_;
}

} // namespace luft::voice
