#include "voice/frames.h"
#include "voice/partials.h"
#include "voice/ring.h"
#include "voice/spectrum.h"

using namespace luft;
using namespace luft::voice;
using namespace luft::voice::test;

namespace {

/// Partials given by their levels.
Partials given(double f0, std::vector<float> levels) {
    return {Hertz(f0), std::move(levels)};
}
constexpr float kNothing = -200;

} // namespace

TEST_CASE("the levels of partials are read off a frame within 0.5 dB, at any pitch from 80 Hz to 1 kHz") {
    // A sine of amplitude A has the mean square A x A / 2.
    const auto amplitude = [](int h) { return 0.3 * std::pow(0.7, h); };
    Spectrum spectrum;
    Partials found;
    for (const double hz : {80.0, 97.3, 131.9, 220.0, 333.3, 440.0, 718.1, 1000.0}) {
        CAPTURE(hz);
        const auto x =
            scenes::partial_tone([=](double) { return hz; }, amplitude, kFrameLength, kEarRate, 5000);
        spectrum.measure(frame_of(x));
        measure_partials(spectrum.power(), Hertz(hz), found);
        REQUIRE(found.levels.size() >= 4);
        double sum = 0;
        for (int h = 1; h <= 4; ++h) {
            const double power = amplitude(h) * amplitude(h) / 2;
            CHECK(found.levels[static_cast<std::size_t>(h - 1)] ==
                  Approx(power_level(power).value()).margin(0.5));
        }
        for (int h = 1; h * hz < 5000; ++h)
            sum += amplitude(h) * amplitude(h) / 2;
        CHECK(level_of(found).value() == Approx(power_level(sum).value()).margin(0.5));
    }
}

TEST_CASE("what stands at one side only is taken out of the focus, what stands in the centre stays") {
    const auto voice = scenes::sine(Hertz(440), 0.2, kFrameLength, kEarRate);
    const auto guitar = scenes::sine(Hertz(1000), 0.2, kFrameLength, kEarRate);
    std::vector<float> middle = voice, side(voice.size(), 0.0F);
    for (std::size_t i = 0; i < middle.size(); ++i) { // the guitar is in the left channel only
        middle[i] += 0.5F * guitar[i];
        side[i] = 0.5F * guitar[i];
    }
    Spectrum spectrum;
    spectrum.measure({{0}, middle, side, std::span<const float>(middle).subspan(1024, 240)});
    const auto at = [](std::span<const float> power, double hz) {
        return power_level(power[static_cast<std::size_t>(std::lround(hz / Spectrum::kBinWidth))]).value();
    };
    CHECK(at(spectrum.focus(), 440) == Approx(at(spectrum.power(), 440)).margin(0.2));
    CHECK(at(spectrum.focus(), 1000) < at(spectrum.power(), 1000) - 15);
}

TEST_CASE("the alpha ratio of a flat spectrum is +6.24 dB, high over low") {
    // 10 log10(4000 / 950): 1 to 5 kHz over 50 Hz to 1 kHz (bands after Frokjaer-Jensen & Prytz 1975).
    std::vector<float> levels(499, -30);
    std::fill(levels.begin(), levels.begin() + 4, kNothing); // partials of 10 Hz below 50 Hz
    const auto flat = alpha_ratio(given(10, levels));
    REQUIRE(flat);
    CHECK(flat->value() == Approx(6.24).margin(0.02));
    // Falling by 6 dB an octave it is 10 log10 of (1/1000 - 1/5000) / (1/50 - 1/1000) = -13.8 dB.
    for (std::size_t i = 4; i < levels.size(); ++i)
        levels[i] = static_cast<float>(-20 * std::log10(static_cast<double>(i + 1)));
    CHECK(alpha_ratio(given(10, levels))->value() == Approx(-13.8).margin(0.5));
    CHECK_FALSE(alpha_ratio(given(200, {-20, -30})));
}

TEST_CASE("the spectral centroid of 100 Hz at 1 and 300 Hz at a half is 140.00 Hz with power weights") {
    CHECK(centroid(given(100, {0, kNothing, -6.0206F}))->value() == Approx(140.00).margin(0.01));
    CHECK_FALSE(centroid(given(100, {})));
}

TEST_CASE(
    "the singing power ratio is the strongest of 2 to 4 kHz over the strongest below (Omori et al. 1996)") {
    // 500 Hz: partials 1 to 3 below 2 kHz, 4 to 8 within 2 to 4 kHz, 9 above.
    CHECK(singing_power_ratio(given(500, {-20, -10, -30, -40, -35, -50, -50, -32, -5}))->value() ==
          Approx(-22));
    CHECK_FALSE(singing_power_ratio(given(500, {-20, -10, -30})));
    CHECK_FALSE(singing_power_ratio(given(2100, {-20, -10})));
}
