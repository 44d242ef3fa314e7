#include "marks/tuning.h"

#include <cmath>
#include <complex>
#include <numbers>

namespace luft::marks {

Hertz find_tuning(std::span<const HeldPitch> notes) {
    std::complex<double> sum = 0;
    double weights = 0;
    for (const HeldPitch& n : notes) {
        sum += std::polar(n.length.value(), 2 * std::numbers::pi * n.pitch.value());
        weights += n.length.value();
    }
    constexpr double kLeastAgreement = 0.2;
    if (weights <= 0 || std::abs(sum) / weights < kLeastAgreement) return Hertz(440);
    return Hertz(440) * std::exp2(std::arg(sum) / (2 * std::numbers::pi) / 12);
}

} // namespace luft::marks
