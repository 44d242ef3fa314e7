#include "singer/lf.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace luft::singer {
namespace {

using std::numbers::pi;

/// eps of the return phase by fixed-point iteration, which converges since ta is short against 1 - te.
double solve_eps(double ta, double rest) {
    double eps = 1 / ta;
    for (int i = 0; i < 200; ++i) {
        const double next = (1 - std::exp(-eps * rest)) / ta;
        if (std::abs(next - eps) < 1e-12 * eps) return next;
        eps = next;
    }
    return eps;
}

/// Area under the open phase with its end scaled to -1.
double open_area(double alpha, double te, double w) {
    const double s = std::sin(w * te), c = std::cos(w * te);
    return -(alpha * s - w * c + w * std::exp(-alpha * te)) / ((alpha * alpha + w * w) * s);
}

double solve_alpha(double te, double w, double return_area) {
    // The open phase's area falls as alpha grows (the pulse leans towards its closing).
    double low = -200, high = 200;
    for (int i = 0; i < 100; ++i) {
        const double middle = (low + high) / 2;
        (open_area(middle, te, w) + return_area > 0 ? low : high) = middle;
    }
    return (low + high) / 2;
}

} // namespace

double LfPulse::at(double t) const {
    if (t < te) return e0 * std::exp(alpha * t) * std::sin(pi * t / tp);
    return -(std::exp(-eps * (t - te)) - std::exp(-eps * (1 - te))) / (eps * ta);
}

LfPulse lf_pulse(double rd) {
    rd = std::clamp(rd, 0.3, 2.7);
    LfPulse p;
    p.ra = (-1 + 4.8 * rd) / 100;
    p.rk = (22.4 + 11.8 * rd) / 100;
    p.rg = p.rk / (4 * (0.11 * rd / (0.5 + 1.2 * p.rk) - p.ra));
    p.tp = 1 / (2 * p.rg);
    p.te = p.tp * (1 + p.rk);
    p.ta = p.ra;
    const double rest = 1 - p.te, w = pi / p.tp;
    p.eps = solve_eps(p.ta, rest);
    const double tail = std::exp(-p.eps * rest);
    const double return_area = -((1 - tail) / p.eps - rest * tail) / (p.eps * p.ta);
    p.alpha = solve_alpha(p.te, w, return_area);
    p.e0 = -1 / (std::exp(p.alpha * p.te) * std::sin(w * p.te));
    return p;
}

std::vector<double> lf_harmonics(const LfPulse& pulse, int count) {
    constexpr int kPoints = 2048;
    std::vector<double> wave(kPoints);
    for (int i = 0; i < kPoints; ++i)
        wave[static_cast<std::size_t>(i)] = pulse.at(double(i) / kPoints);
    std::vector<double> amplitude;
    for (int k = 1; k <= count; ++k) {
        const std::complex<double> step = std::polar(1.0, -2 * pi * k / kPoints);
        std::complex<double> turn = 1, sum = 0;
        for (const double v : wave)
            sum += v * turn, turn *= step;
        amplitude.push_back(2 * std::abs(sum) / kPoints);
    }
    return amplitude;
}

} // namespace luft::singer
