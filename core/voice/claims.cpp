#include "voice/claims.h"

#include "voice/spectrum.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {
namespace {

constexpr int kPartials = 12;
constexpr double kLastBin = 505;
constexpr double kReach = 0.7; // bins to either side of a partial's place

float at(std::span<const float> x, double bin) {
    bin = std::clamp(bin, 0.0, static_cast<double>(kClaimBins - 2));
    const auto i = static_cast<std::size_t>(bin);
    return x[i] + static_cast<float>(bin - static_cast<double>(i)) * (x[i + 1] - x[i]);
}

float peak_near(std::span<const float> x, double bin) {
    return std::max({at(x, bin - kReach), at(x, bin), at(x, bin + kReach)});
}

/// The mean of what is added, each within limits.
class LimitedMean {
  public:
    LimitedMean(float least, float most) : least_(least), most_(most) {}
    void add(float value) {
        sum_ += std::clamp(value, least_, most_);
        ++count_;
    }
    [[nodiscard]] float value() const { return count_ == 0 ? 0 : sum_ / static_cast<float>(count_); }

  private:
    float least_, most_;
    float sum_ = 0;
    int count_ = 0;
};

} // namespace

Claim measure_claim(std::span<const float> decibels, Hertz pitch) {
    const double step = pitch.value() / Spectrum::kBinWidth;
    LimitedMean half(-10, 20), odd(-15, 25);
    double power = 0, high = 0;
    float strongest = -140, between = -140;
    for (int h = 1; h <= kPartials && h * step < kLastBin; ++h) {
        const double place = h * step;
        const float on = peak_near(decibels, place);
        const double partial = std::pow(10.0, on / 10);
        power += partial;
        if (const double hz = h * pitch.value(); hz > 1500 && hz < 4000) high += partial;
        if (h > 8) continue;
        const float below = at(decibels, place - 0.5 * step), above = at(decibels, place + 0.5 * step);
        if (h <= 4) {
            strongest = std::max(strongest, on);
            between = std::max(between, 0.5F * (below + above));
        }
        if (h <= 6)
            half.add(peak_near(decibels, place - 0.5 * step) -
                     0.5F * (at(decibels, place - 0.25 * step) + at(decibels, place - 0.75 * step)));
        if (h % 2 == 1) odd.add(on - 0.5F * (below + above));
    }
    const Decibels level = power_level(power);
    return {static_cast<float>(level.value()),
            static_cast<float>(std::max((power_level(high) - level).value(), -50.0)),
            std::clamp(between - strongest, -30.0F, 10.0F), half.value(), odd.value()};
}

} // namespace luft::voice
