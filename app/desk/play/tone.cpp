#include "desk/play/tone.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::desk {
namespace {

// Strong enough above to place the pitch by ear, weak enough to stay plain. Chosen by hand, no source.
constexpr double kPartials[]{1, 0.4, 0.2};
constexpr Seconds kRise{0.010};
constexpr std::size_t kStep = 64;    // frames between two looks at the pitch
constexpr double kHighest = 0.45;    // of the sample rate: partials above are left out
constexpr double kMostHertz = 10000; // no voice's; nothing beyond is played

/// Amplitude of the first partial at the tone's level.
double scale() {
    double power = 0;
    for (const double a : kPartials)
        power += a * a / 2;
    return amplitude_of(Tone::kLevel) / std::sqrt(power);
}

} // namespace

void Tone::add(std::span<float> frames, const ToneAt* at, Seconds media, Seconds step) {
    if (at == nullptr && strength_ <= 0) return;
    for (std::size_t i = 0; i < frames.size() / 2; ++i) {
        if (i % kStep == 0) {
            const auto pitch = at != nullptr ? (*at)(media + static_cast<double>(i) * step) : std::nullopt;
            on_ = pitch && pitch->value() > 0 && pitch->value() < kMostHertz;
            if (on_) towards_ = pitch->value();
            if (strength_ <= 0) hertz_ = towards_;
        }
        const float x = next();
        frames[2 * i] += x;
        frames[2 * i + 1] += x;
    }
}

float Tone::next() {
    const double change = 1 / (kRise.value() * rate_.per_second);
    strength_ = std::clamp(strength_ + (on_ ? change : -change), 0.0, 1.0);
    if (strength_ <= 0) return 0;
    hertz_ += (towards_ - hertz_) / (kStep / 4.0);
    phase_ += hertz_ / rate_.per_second;
    phase_ -= std::floor(phase_);
    double sum = 0;
    double k = 1;
    for (const double a : kPartials) {
        if (k * hertz_ < kHighest * rate_.per_second) sum += a * std::sin(2 * std::numbers::pi * k * phase_);
        k += 1;
    }
    static const double kScale = scale();
    return static_cast<float>(kScale * strength_ * sum);
}

} // namespace luft::desk
