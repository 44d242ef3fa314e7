#include "singer/tract.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace luft::singer {

using std::numbers::pi;

void Resonator::tune(Formant f, SampleRate rate) {
    const double t = 1.0 / rate.per_second;
    c = -std::exp(-2 * pi * f.bandwidth.value() * t);
    b = 2 * std::exp(-pi * f.bandwidth.value() * t) * std::cos(2 * pi * f.frequency.value() * t);
    a = 1 - b - c;
}

std::complex<double> Resonator::response(Hertz f, SampleRate rate) const {
    const std::complex<double> z = std::polar(1.0, -2 * pi * f.value() / rate.per_second);
    return a / (1.0 - b * z - c * z * z);
}

void Tract::shape(const Formants& formants) {
    constexpr double kGap = 800, kSpacing = 1000; // a 17.5 cm tube
    constexpr double kTop = 9000;
    const double limit = 0.45 * rate_.per_second;
    std::size_t n = 0;
    const auto put = [&](Formant f) {
        if (f.frequency.value() > limit) return;
        if (n == row_.size()) row_.emplace_back();
        row_[n++].tune(f, rate_);
    };
    for (const Formant& f : formants)
        put(f);
    // A fixed number of upper resonators, so that the row keeps its length while vowels move. Losses grow
    // upwards.
    const double from = std::max(formants[4].frequency.value(), 3200.0) + kGap;
    for (int i = 0; i < 5; ++i) {
        const double f = std::min(from + kSpacing * i, kTop + 200 * i);
        put({Hertz(f), Hertz(250 + 100 * i)});
    }
    row_.resize(n);
}

double Tract::gain(Hertz f) const {
    double g = 1;
    for (const auto& r : row_)
        g *= std::abs(r.response(f, rate_));
    return g;
}

} // namespace luft::singer
