#include "singer/source.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <map>
#include <numbers>

namespace luft::singer {
namespace {

using std::numbers::pi;

constexpr int kOver = 4;
constexpr int kTaps = 96;

/// Modified Bessel function of order 0, by its power series (Abramowitz & Stegun 9.6.12).
double bessel_i0(double x) {
    double sum = 1, term = 1;
    for (int k = 1; k < 60; ++k)
        term *= (x / 2 / k) * (x / 2 / k), sum += term;
    return sum;
}

std::array<float, kTaps> decimator() {
    std::array<double, kTaps> h{};
    constexpr double kBeta = 8, kCutoff = 0.44 / kOver; // of the fast rate
    const double middle = (kTaps - 1) / 2.0;
    double sum = 0;
    for (int i = 0; i < kTaps; ++i) {
        const double t = i - middle;
        const double r = t / (kTaps / 2.0);
        h[static_cast<std::size_t>(i)] =
            std::sin(2 * pi * kCutoff * t) / (pi * t) * bessel_i0(kBeta * std::sqrt(1 - r * r));
        sum += h[static_cast<std::size_t>(i)];
    }
    std::array<float, kTaps> out{};
    for (std::size_t i = 0; i < kTaps; ++i)
        out[i] = static_cast<float>(h[i] / sum);
    return out;
}

/// Solving the pulse takes a hundred steps, so shapes are shared: a hundredth of Rd is far below what is
/// heard.
class PulseBook {
  public:
    const LfPulse& of(double rd) {
        const int key = static_cast<int>(std::lround(rd * 100));
        auto [it, fresh] = pulses_.try_emplace(key);
        if (fresh) it->second = lf_pulse(key / 100.0);
        return it->second;
    }

  private:
    std::map<int, LfPulse> pulses_;
};

/// Writes one cycle that starts at `start` and lasts `length` (both in fast samples, fractional).
void write_cycle(std::vector<float>& fast, double start, double length, const LfPulse& p, double strength) {
    auto n = static_cast<std::size_t>(std::max(0.0, std::ceil(start)));
    const auto end =
        std::min(fast.size(), static_cast<std::size_t>(std::max(0.0, std::ceil(start + length))));
    const double w = pi / p.tp, dt = 1 / length;
    double t = (static_cast<double>(n) - start) * dt;
    // Exponential times sine is a turning, growing pointer; exponential alone a shrinking number.
    std::complex<double> pointer = std::polar(p.e0 * strength * std::exp(p.alpha * t), w * t);
    const std::complex<double> turn = std::polar(std::exp(p.alpha * dt), w * dt);
    for (; n < end && t < p.te; ++n, t += dt, pointer *= turn)
        fast[n] = static_cast<float>(pointer.imag());
    const double scale = -strength / (p.eps * p.ta), floor = std::exp(-p.eps * (1 - p.te));
    double fall = std::exp(-p.eps * (t - p.te));
    const double shrink = std::exp(-p.eps * dt);
    for (; n < end; ++n, fall *= shrink)
        fast[n] = static_cast<float>(scale * (fall - floor));
}

void write_opening(std::vector<float>& opening, double start, double length, const LfPulse& p) {
    auto n = static_cast<std::size_t>(std::max(0.0, std::ceil(start)));
    const auto end =
        std::min(opening.size(), static_cast<std::size_t>(std::max(0.0, std::ceil(start + length))));
    for (; n < end; ++n) {
        const double t = (static_cast<double>(n) - start) / length;
        const double x = std::min(t / (p.te + p.ta), 1.0);
        opening[n] = static_cast<float>(4 * x * (1 - x)); // a parabola is near enough to the flow for noise
    }
}

} // namespace

SourceSamples pulse_train(std::size_t samples, SampleRate rate, Random random,
                          const std::function<CycleShape(Seconds)>& shape_at) {
    const double fast_rate = static_cast<double>(rate.per_second) * kOver;
    constexpr std::size_t kLead = kTaps / 2; // the filter's delay, in fast samples
    std::vector<float> fast(samples * kOver + kTaps);
    SourceSamples out{std::vector<float>(samples), std::vector<float>(samples)};
    PulseBook book;
    for (double start = 0; start < static_cast<double>(fast.size());) {
        const CycleShape c = shape_at(Seconds(std::max(0.0, (start - kLead) / fast_rate)));
        const double swing = std::clamp(1 + c.jitter * random.bell(), 0.5, 1.8);
        const double strength = std::clamp(1 + c.shimmer * random.bell(), 0.1, 2.0);
        const double length = fast_rate / c.f0.value() * swing;
        const LfPulse& pulse = book.of(std::clamp(c.rd, 0.3, 2.7));
        write_cycle(fast, start, length, pulse, strength);
        write_opening(out.opening, (start - kLead) / kOver, length / kOver, pulse);
        start += length;
    }
    static const std::array<float, kTaps> kFilter = decimator();
    for (std::size_t n = 0; n < samples; ++n) {
        const float* x = fast.data() + n * kOver;
        std::array<float, 8> sum{}; // eight sums side by side, in a fixed order on any machine
        for (std::size_t i = 0; i < kTaps; i += 8)
            for (std::size_t k = 0; k < 8; ++k)
                sum[k] += kFilter[i + k] * x[i + k];
        out.flow[n] = ((sum[0] + sum[4]) + (sum[2] + sum[6])) + ((sum[1] + sum[5]) + (sum[3] + sum[7]));
    }
    return out;
}

} // namespace luft::singer
