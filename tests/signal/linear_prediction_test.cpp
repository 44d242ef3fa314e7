#include "signal/linear_prediction.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <complex>
#include <numbers>

using namespace luft;
using namespace luft::signal;

namespace {

/// The polynomial whose poles are the given resonances.
std::vector<double> polynomial_of(const std::vector<Resonance>& poles, SampleRate rate) {
    std::vector<double> a{1};
    for (const Resonance& p : poles) {
        const double r = std::exp(-std::numbers::pi * p.bandwidth.value() / rate.per_second);
        const double w = 2 * std::numbers::pi * p.frequency.value() / rate.per_second;
        std::vector<double> next(a.size() + 2, 0.0);
        for (std::size_t i = 0; i < a.size(); ++i) {
            next[i] += a[i];
            next[i + 1] -= 2 * r * std::cos(w) * a[i];
            next[i + 2] += r * r * a[i];
        }
        a = next;
    }
    return a;
}

/// Autocorrelation of the impulse response of 1 / a.
std::vector<double> autocorrelation_of(const std::vector<double>& a, int lags) {
    std::vector<double> h;
    for (int n = 0; n < 6000; ++n) {
        double y = n == 0 ? 1 : 0;
        for (std::size_t j = 1; j < a.size() && static_cast<int>(j) <= n; ++j)
            y -= a[j] * h[static_cast<std::size_t>(n) - j];
        h.push_back(y);
    }
    std::vector<double> r;
    for (int m = 0; m <= lags; ++m) {
        double sum = 0;
        for (std::size_t n = static_cast<std::size_t>(m); n < h.size(); ++n)
            sum += h[n] * h[n - static_cast<std::size_t>(m)];
        r.push_back(sum);
    }
    return r;
}

} // namespace

TEST_CASE("the Levinson recursion solves the example worked out by hand") {
    // r = 1, 1/2, 1/4 is that of y(n) = y(n-1)/2 + e: the second coefficient is nothing.
    const auto one = levinson(std::vector{1.0, 0.5, 0.25}, 2);
    REQUIRE(one.size() == 3);
    CHECK(one[0] == 1);
    CHECK(one[1] == Approx(-0.5));
    CHECK(one[2] == Approx(0).margin(1e-15));
    // r = 3, 2, 1: k1 = -2/3, error 5/3; k2 = -(1 - 4/3) / (5/3) = 1/5; a1 = -2/3 (1 + 1/5) = -4/5.
    const auto two = levinson(std::vector{3.0, 2.0, 1.0}, 2);
    CHECK(two[1] == Approx(-0.8));
    CHECK(two[2] == Approx(0.2));
    // The normal equations hold: r1 + a1 r0 + a2 r1 = 0, r2 + a1 r1 + a2 r0 = 0.
    CHECK(2 + two[1] * 3 + two[2] * 2 == Approx(0).margin(1e-12));
    CHECK(1 + two[1] * 2 + two[2] * 3 == Approx(0).margin(1e-12));
}

TEST_CASE("silence has no predictor, and a short autocorrelation of white noise predicts nothing") {
    CHECK(levinson(std::vector<double>(5, 0.0), 4) == std::vector<double>{1, 0, 0, 0, 0});
    CHECK(levinson(std::vector<double>{2, 0, 0, 0, 0}, 4)[3] == Approx(0).margin(1e-15));
}

TEST_CASE("the poles of an all-pole filter come back from its autocorrelation") {
    constexpr SampleRate kRate{11000};
    // A uniform tube of 17.5 cm rings at 500, 1500 … 4500 Hz; then the tenor's a and i (Csound manual's
    // table).
    const std::vector<std::vector<Resonance>> tracts{{{Hertz(500), Hertz(60)},
                                                      {Hertz(1500), Hertz(90)},
                                                      {Hertz(2500), Hertz(120)},
                                                      {Hertz(3500), Hertz(150)}},
                                                     {{Hertz(650), Hertz(80)},
                                                      {Hertz(1080), Hertz(90)},
                                                      {Hertz(2650), Hertz(120)},
                                                      {Hertz(2900), Hertz(130)},
                                                      {Hertz(3250), Hertz(140)}},
                                                     {{Hertz(290), Hertz(40)},
                                                      {Hertz(1870), Hertz(90)},
                                                      {Hertz(2800), Hertz(100)},
                                                      {Hertz(3250), Hertz(120)},
                                                      {Hertz(3540), Hertz(120)}}};
    for (const auto& tract : tracts) {
        const auto a = polynomial_of(tract, kRate);
        const int order = static_cast<int>(a.size()) - 1;
        const auto found = levinson(autocorrelation_of(a, order), order);
        for (std::size_t i = 0; i < a.size(); ++i)
            CHECK(found[i] == Approx(a[i]).margin(1e-6));
        const auto poles = resonances(found, kRate);
        REQUIRE(poles.size() == tract.size());
        for (std::size_t i = 0; i < poles.size(); ++i) {
            CHECK(poles[i].frequency.value() == Approx(tract[i].frequency.value()).margin(0.1));
            CHECK(poles[i].bandwidth.value() == Approx(tract[i].bandwidth.value()).margin(0.1));
        }
    }
}

TEST_CASE("real poles are no resonances") {
    // (1 - 0.5/z)(1 + 0.3/z) times a pair at 1000 Hz.
    const auto pair = polynomial_of({{Hertz(1000), Hertz(100)}}, SampleRate{10000});
    std::vector<double> a(pair.size() + 2, 0.0);
    for (std::size_t i = 0; i < pair.size(); ++i) {
        a[i] += pair[i];
        a[i + 1] -= 0.2 * pair[i];
        a[i + 2] -= 0.15 * pair[i];
    }
    const auto found = resonances(a, SampleRate{10000});
    REQUIRE(found.size() == 1);
    CHECK(found[0].frequency.value() == Approx(1000).margin(0.01));
    CHECK(found[0].bandwidth.value() == Approx(100).margin(0.01));
}
