#include "voice/texture.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {
namespace {

constexpr Hertz kLowCorner{1200};
constexpr Hertz kHighCorner{3000};

float decibels(double power) {
    return static_cast<float>(power_level(power).value());
}

float tonality_of(std::span<const float> power) {
    constexpr std::size_t kFirst = 2, kLast = 6; // bands
    double sum = 0, bins = 0;
    for (std::size_t b = kFirst; b <= kLast; ++b) {
        const auto lo = static_cast<std::size_t>(std::ceil(kBandEdges[b] / Spectrum::kBinWidth));
        const auto hi = static_cast<std::size_t>(std::ceil(kBandEdges[b + 1] / Spectrum::kBinWidth));
        const auto width = static_cast<double>(hi - lo);
        double mean = 0, levels = 0;
        for (std::size_t k = lo; k < hi; ++k) {
            constexpr float kLeast = 1e-14F; // digital silence is flat
            const float p = std::max(power[k], kLeast);
            mean += p;
            levels += decibels(p);
        }
        sum += width * decibels(mean / width) - levels;
        bins += width;
    }
    return static_cast<float>(sum / bins);
}

} // namespace

Texture::Texture()
    : low1_(signal::Biquad::low_pass(kLowCorner, kEarRate)), low2_(low1_),
      high1_(signal::Biquad::high_pass(kHighCorner, kEarRate)), high2_(high1_) {}

void Texture::add(const Frame& frame, const Spectrum& spectrum) {
    BandLevels levels{};
    const auto power = spectrum.power();
    // A Hann window spreads a sine over bins whose powers add up to 1.5 times the peak.
    constexpr double kSpread = 1.5;
    for (std::size_t b = 0; b < kBands; ++b) {
        const auto lo = static_cast<std::size_t>(std::ceil(kBandEdges[b] / Spectrum::kBinWidth));
        const auto hi = static_cast<std::size_t>(std::ceil(kBandEdges[b + 1] / Spectrum::kBinWidth));
        double sum = 0;
        for (std::size_t k = lo; k < std::min(hi, power.size()); ++k)
            sum += power[k];
        levels[b] = decibels(sum / kSpread);
    }
    bands_.push_back(levels);
    tonality_.push_back(tonality_of(power));

    constexpr int kFine = kHopSamples / kFinePerFrame;
    for (int part = 0; part < kFinePerFrame; ++part) {
        double full = 0, low = 0, high = 0;
        for (const float x : frame.hop.subspan(static_cast<std::size_t>(part * kFine), kFine)) {
            const float l = low2_(low1_(x));
            const float h = high2_(high1_(x));
            full += static_cast<double>(x) * x;
            low += static_cast<double>(l) * l;
            high += static_cast<double>(h) * h;
        }
        full_.push_back(decibels(full / kFine));
        low_.push_back(decibels(low / kFine));
        high_.push_back(decibels(high / kFine));
    }
}

Decibels Texture::around(const std::vector<float>& fine, std::size_t frame) {
    const auto centre = static_cast<std::ptrdiff_t>(frame) * kFinePerFrame;
    const auto lo = std::max<std::ptrdiff_t>(0, centre - 8);
    const auto hi = std::min<std::ptrdiff_t>(static_cast<std::ptrdiff_t>(fine.size()), centre + 8);
    double sum = 0;
    for (auto i = lo; i < hi; ++i)
        sum += std::pow(10.0, fine[static_cast<std::size_t>(i)] / 10);
    return power_level(hi > lo ? sum / static_cast<double>(hi - lo) : 0);
}

} // namespace luft::voice
