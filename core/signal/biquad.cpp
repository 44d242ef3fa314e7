#include "signal/biquad.h"

#include <cmath>
#include <numbers>

namespace luft::signal {

Biquad Biquad::low_pass(Hertz corner, SampleRate rate) {
    const double k = std::tan(std::numbers::pi * corner.value() / rate.per_second);
    const double norm = 1 / (1 + std::numbers::sqrt2 * k + k * k);
    Biquad f;
    f.b0_ = f.b2_ = k * k * norm;
    f.b1_ = 2 * f.b0_;
    f.a1_ = 2 * (k * k - 1) * norm;
    f.a2_ = (1 - std::numbers::sqrt2 * k + k * k) * norm;
    return f;
}

Biquad Biquad::high_pass(Hertz corner, SampleRate rate) {
    Biquad f = low_pass(corner, rate);
    const double k = std::tan(std::numbers::pi * corner.value() / rate.per_second);
    const double norm = 1 / (1 + std::numbers::sqrt2 * k + k * k);
    f.b0_ = f.b2_ = norm;
    f.b1_ = -2 * norm;
    return f;
}

} // namespace luft::signal
