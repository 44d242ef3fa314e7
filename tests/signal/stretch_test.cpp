#include "signal/fft.h"
#include "signal/stretch.h"
#include "signal/window.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace luft;
using namespace luft::signal;
using std::numbers::pi;

namespace {

constexpr int kRate = 48000;
constexpr SampleRate kSampleRate{kRate};

/// In blocks of a length that divides nothing.
std::vector<float> stretched(const std::vector<float>& in, int channels, double speed) {
    Stretcher stretcher(kSampleRate, channels, speed);
    std::vector<float> out;
    const std::size_t block = 777 * static_cast<std::size_t>(channels);
    for (std::size_t i = 0; i < in.size(); i += block)
        stretcher.process(std::span(in).subspan(i, std::min(block, in.size() - i)), out);
    stretcher.finish(out);
    return out;
}

/// Frequency of the loudest partial: the spectrum's peak, by the parabola through its logarithms.
double loudest(std::span<const float> x) {
    RealFft fft(16384);
    REQUIRE(x.size() >= fft.size());
    const auto window = hann(fft.size());
    for (std::size_t i = 0; i < fft.size(); ++i)
        fft.samples()[i] = x[i] * window[i];
    fft.forward();
    std::size_t k = 1;
    for (std::size_t i = 1; i + 1 < fft.bins(); ++i)
        if (std::abs(fft.spectrum()[i]) > std::abs(fft.spectrum()[k])) k = i;
    const auto level = [&](std::size_t i) { return std::log(std::abs(fft.spectrum()[i]) + 1e-12F); };
    const double a = level(k - 1), b = level(k), c = level(k + 1);
    return (static_cast<double>(k) + 0.5 * (a - c) / (a - 2 * b + c)) * kRate /
           static_cast<double>(fft.size());
}

} // namespace

TEST_CASE("a tone at a slower speed lasts longer in proportion and keeps its pitch") {
    const double speed = GENERATE(0.25, 0.5, 0.8);
    CAPTURE(speed);
    std::vector<float> in;
    for (int i = 0; i < 3 * kRate; ++i) {
        in.push_back(static_cast<float>(0.3 * std::sin(2 * pi * 220 * i / kRate)));
        in.push_back(static_cast<float>(0.3 * std::sin(2 * pi * 330 * i / kRate)));
    }
    const auto out = stretched(in, 2, speed);
    CHECK(static_cast<double>(out.size()) == Approx(static_cast<double>(in.size()) / speed).epsilon(0.01));
    std::vector<float> left, right;
    for (std::size_t i = out.size() / 3 & ~std::size_t{1}; i < out.size(); i += 2) {
        left.push_back(out[i]);
        right.push_back(out[i + 1]);
    }
    CHECK(loudest(left) == Approx(220).epsilon(0.005));
    CHECK(loudest(right) == Approx(330).epsilon(0.005));
    CHECK(*std::ranges::max_element(left) == Approx(0.3).margin(0.03));
}

TEST_CASE("a click comes out at its time, from the first sample to the last second") {
    const double speed = GENERATE(0.25, 0.5, 0.75, 0.95);
    CAPTURE(speed);
    std::vector<float> in(5 * kRate);
    const std::vector<double> clicks{0.05, 1.0, 2.5, 4.9};
    for (const double at : clicks)
        in[static_cast<std::size_t>(at * kRate)] = 0.9F;
    const auto out = stretched(in, 1, speed);
    for (const double at : clicks) {
        const auto place = static_cast<std::ptrdiff_t>(at / speed * kRate);
        const auto first = static_cast<std::size_t>(std::max<std::ptrdiff_t>(place - kRate / 8, 0));
        const auto end = std::min(static_cast<std::size_t>(place + kRate / 8), out.size());
        std::size_t peak = first;
        double power = 0, moment = 0;
        for (std::size_t i = first; i < end; ++i) {
            if (std::abs(out[i]) > std::abs(out[peak])) peak = i;
            power += out[i] * out[i];
            moment += out[i] * out[i] * static_cast<double>(i);
        }
        CAPTURE(at);
        REQUIRE(std::abs(out[peak]) > 0.4F);
        // A click is spread by up to 20 ms; its loudest sample is its start, the middle of its energy its
        // place.
        CHECK(std::abs(moment / power - static_cast<double>(place)) / kRate < 0.020);
        CHECK(std::abs(static_cast<double>(peak) - static_cast<double>(place)) * speed / kRate < 0.020);
    }
}

TEST_CASE("nothing in gives nothing out") {
    CHECK(stretched({}, 2, 0.5).empty());
}
