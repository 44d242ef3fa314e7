#include "base/error.h"
#include "signal/biquad.h"
#include "signal/fft.h"
#include "signal/resampler.h"
#include "signal/window.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

using namespace luft;
using namespace luft::signal;
using std::numbers::pi;

namespace {

std::vector<float> sine(double hz, int rate, std::size_t n, double amplitude = 1) {
    std::vector<float> x(n);
    for (std::size_t i = 0; i < n; ++i)
        x[i] = static_cast<float>(amplitude * std::sin(2 * pi * hz * static_cast<double>(i) / rate));
    return x;
}

} // namespace

TEST_CASE("a transform there and back is its size times what went in, and power is kept (Parseval)") {
    RealFft fft(64);
    REQUIRE(fft.bins() == 33);
    std::vector<float> x(64);
    double power = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        x[i] = static_cast<float>(std::sin(0.7 * static_cast<double>(i * i)));
        power += x[i] * x[i];
    }
    std::ranges::copy(x, fft.samples().begin());
    fft.forward();
    double spectral = 0;
    for (std::size_t k = 0; k < fft.bins(); ++k)
        spectral += (k == 0 || k == 32 ? 1 : 2) * std::norm(fft.spectrum()[k]);
    CHECK(spectral / 64 == Approx(power).epsilon(1e-5));
    fft.backward();
    for (std::size_t i = 0; i < x.size(); ++i)
        CHECK(fft.samples()[i] / 64 == Approx(x[i]).margin(1e-5));
}

TEST_CASE("a cosine of k cycles stands in bin k with half its size") {
    RealFft fft(32);
    for (std::size_t i = 0; i < 32; ++i)
        fft.samples()[i] = static_cast<float>(std::cos(2 * pi * 5 * static_cast<double>(i) / 32));
    fft.forward();
    for (std::size_t k = 0; k < fft.bins(); ++k)
        CHECK(std::abs(fft.spectrum()[k]) == Approx(k == 5 ? 16 : 0).margin(1e-4));
}

TEST_CASE("a Hann window starts at 0, is 1 in the middle, and two at half its length apart add up to 1") {
    const auto w = hann(64);
    CHECK(w[0] == Approx(0).margin(1e-7));
    CHECK(w[32] == Approx(1));
    CHECK(w[16] == Approx(0.5));
    for (std::size_t i = 0; i < 32; ++i)
        CHECK(w[i] + w[i + 32] == Approx(1).margin(1e-6));
}

TEST_CASE("a Butterworth filter has lost 3.01 dB at its corner and 12 dB an octave beyond") {
    constexpr SampleRate kRate{24000};
    const auto gain = [&](Biquad filter, double hz) {
        double power = 0;
        const auto x = sine(hz, kRate.per_second, 24000);
        for (std::size_t i = 0; i < x.size(); ++i) {
            const double y = filter(x[i]);
            if (i >= 12000) power += y * y;
        }
        return power_level(power / 12000 * 2).value();
    };
    CHECK(gain(Biquad::low_pass(Hertz(1000), kRate), 1000) == Approx(-3.01).margin(0.02));
    CHECK(gain(Biquad::low_pass(Hertz(1000), kRate), 100) == Approx(0).margin(0.02));
    CHECK(gain(Biquad::high_pass(Hertz(1000), kRate), 1000) == Approx(-3.01).margin(0.02));
    CHECK(gain(Biquad::high_pass(Hertz(1000), kRate), 8000) == Approx(0).margin(0.02));
    // 10 log10(1 + 4^4) = 24.1 dB two octaves away.
    CHECK(gain(Biquad::high_pass(Hertz(1000), kRate), 250) == Approx(-24.1).margin(0.3));
}

TEST_CASE("a sine at another rate is the same sine at the same time") {
    for (const int from : {8000, 16000, 22050, 44100, 48000, 96000, 192000}) {
        CAPTURE(from);
        Resampler resampler(SampleRate{from}, SampleRate{24000});
        const auto in = sine(700, from, static_cast<std::size_t>(from));
        std::vector<float> out;
        for (std::size_t i = 0; i < in.size(); i += 1000)
            resampler.process(std::span(in).subspan(i, std::min<std::size_t>(1000, in.size() - i)), out);
        resampler.finish(out);
        REQUIRE(std::abs(static_cast<double>(out.size()) - 24000) <= 1);
        const auto expected = sine(700, 24000, out.size());
        double worst = 0;
        for (std::size_t i = 1000; i + 1000 < out.size(); ++i)
            worst = std::max(worst, static_cast<double>(std::abs(out[i] - expected[i])));
        CHECK(worst < 0.002);
    }
}

TEST_CASE("what lies above half the new rate is gone, not folded down") {
    Resampler resampler(SampleRate{48000}, SampleRate{24000});
    const auto in = sine(15000, 48000, 48000);
    std::vector<float> out;
    resampler.process(in, out);
    resampler.finish(out);
    double power = 0;
    for (std::size_t i = 2000; i + 2000 < out.size(); ++i)
        power += out[i] * out[i];
    CHECK(power_level(power / static_cast<double>(out.size())).value() < -80);
}
