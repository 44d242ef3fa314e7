// Pitch candidates of single frames: exact cases.
#include "scenes/tones.h"
#include "voice/yin.h"

#include <catch2/catch.hpp>

#include <iostream>

using namespace luft;
using namespace luft::voice;

namespace {

PitchCandidate best(Yin& yin, std::span<const float> frame) {
    const auto found = yin.candidates(frame);
    REQUIRE_FALSE(found.empty());
    return *std::ranges::max_element(found, {}, &PitchCandidate::probability);
}

double cents_off(const PitchCandidate& c, double hz) {
    return 1200 * std::log2(c.hz / hz);
}

const Seconds kLength{static_cast<double>(kFrameSamples) / kEarRate.per_second};

/// Partials that fall by 6 dB an octave up to 5 kHz, about as a voice's do.
std::vector<float> tone_of(double period) {
    const double hz = kEarRate.per_second / period;
    return scenes::partial_tone([=](double) { return hz; }, [](int h) { return 0.2 / h; }, kLength, kEarRate,
                                5000);
}

} // namespace

TEST_CASE("a pulse train with a whole number of samples to the period is found exactly") {
    // The normalised difference is 0 at the period's lag: 120 samples for 200 Hz at 24 kHz, and so on.
    for (const int period : {400, 240, 120, 80, 60, 40}) {
        CAPTURE(period);
        std::vector<float> x(kFrameSamples, 0.0F);
        for (std::size_t i = 7; i < x.size(); i += static_cast<std::size_t>(period))
            x[i] = 1;
        Yin yin;
        const auto found = best(yin, x);
        CHECK(cents_off(found, static_cast<double>(kEarRate.per_second) / period) == Approx(0).margin(0.5));
        CHECK(found.probability > 0.9);
        CHECK(yin.aperiodicity() == Approx(0).margin(1e-4));
    }
}

TEST_CASE("a period that falls between samples is found by the parabola, not rounded to a sample") {
    // At 109.5 samples rounding would be 7.9 cents off; at 30.5 samples it would be 28 cents off.
    Yin yin;
    double worst = 0;
    for (const double period : {30.5, 55.25, 109.5, 110.25, 200.4, 301.7}) {
        CAPTURE(period);
        const double off = cents_off(best(yin, tone_of(period)), kEarRate.per_second / period);
        CHECK(off == Approx(0).margin(3));
        worst = std::max(worst, std::abs(off));
    }
    CHECK(worst < 3);
}

TEST_CASE("a second partial lifted by a narrow formant doesn't pass for the pitch") {
    // A bass's [o] at G3: F1 = 400 Hz, bandwidth 40 Hz, lies on the second partial, some 20 dB over the
    // first.
    Yin yin;
    const auto tall = [](int h) { return h == 1 ? 0.02 : h == 2 ? 0.2 : 0.06 / h; };
    for (const double hz : {98.0, 147.0, 196.0, 200.0, 220.0, 311.1, 400.0}) {
        CAPTURE(hz);
        const auto x = scenes::partial_tone([=](double) { return hz; }, tall, kLength, kEarRate, 5000);
        CHECK(cents_off(best(yin, x), hz) == Approx(0).margin(5));
    }
}

TEST_CASE("a sine is found over the whole range of voices, within 3 cents") {
    Yin yin;
    for (double midi = 33.1; midi < 89; midi += 0.37) {
        const Hertz f = frequency_of(MidiPitch(midi));
        CAPTURE(f.value());
        CHECK(cents_off(best(yin, scenes::sine(f, 0.3, kLength, kEarRate, 31)), f.value()) ==
              Approx(0).margin(3));
    }
}

TEST_CASE("a tone without its fundamental has the pitch of its period") {
    Yin yin;
    const auto x = scenes::partial_tone([](double) { return 150.0; }, [](int h) { return h < 3 ? 0.0 : 0.1; },
                                        kLength, kEarRate, 3000);
    CHECK(cents_off(best(yin, x), 150) == Approx(0).margin(3));
}

TEST_CASE("silence has no candidate, and white noise none that is likely") {
    Yin yin;
    CHECK(yin.candidates(std::vector<float>(kFrameSamples, 0.0F)).empty());
    CHECK(yin.aperiodicity() == 1);
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        double sum = 0;
        for (const auto& c : yin.candidates(scenes::noise(0.1, kLength, kEarRate, seed)))
            sum += c.probability;
        CHECK(sum < 0.3);
        CHECK(yin.aperiodicity() > 0.4);
    }
}

TEST_CASE("the probabilities of a frame add up to 1 at most") {
    Yin yin;
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        auto x = scenes::sine(Hertz(220), 0.1, kLength, kEarRate);
        scenes::add(x, scenes::noise(0.01, kLength, kEarRate, seed));
        double sum = 0;
        for (const auto& c : yin.candidates(x)) {
            CHECK(c.probability >= 0);
            sum += c.probability;
        }
        CHECK(sum <= 1 + 1e-6);
        CHECK(sum > 0.5);
    }
}
