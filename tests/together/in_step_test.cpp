// What is heard on the left and on the right, on sounds whose every place is known.
#include "reference/aubio_pitch.h"
#include "together/in_step.h"
#include "together/material.h"
#include "tools/memory_sound.h"
#include "voice/loudness.h"

#include <catch2/catch.hpp>

#include <numbers>

using namespace luft;
using namespace luft::together;
using namespace luft::together::test;
using namespace luft::literals;
using luft::test::MemorySound;

namespace {

constexpr int kRate = 44100;

double rms(std::span<const float> x) {
    double power = 0;
    for (const float v : x)
        power += v * v;
    return std::sqrt(power / static_cast<double>(std::max<std::size_t>(x.size(), 1)));
}

/// RMS of a side between two times.
double level(const std::vector<float>& stereo, int which, double from, double to) {
    const auto x = side(stereo, which);
    const auto first = static_cast<std::size_t>(from * kRate);
    return rms(std::span(x).subspan(first, static_cast<std::size_t>(to * kRate) - first));
}

std::vector<float> tone(double seconds, double hertz, double amplitude, int channels = 1) {
    std::vector<float> out;
    for (int n = 0; n < std::lround(seconds * kRate); ++n)
        for (int c = 0; c < channels; ++c)
            out.push_back(static_cast<float>(amplitude * std::sin(2 * std::numbers::pi * hertz * n / kRate)));
    return out;
}

/// With twelve partials, as a voice has them.
std::vector<float> rich_tone(double seconds, double hertz) {
    std::vector<float> out(static_cast<std::size_t>(seconds * kRate));
    for (int partial = 1; partial <= 12; ++partial) {
        const auto one = tone(seconds, hertz * partial, 0.2 / partial);
        std::ranges::transform(out, one, out.begin(), std::plus());
    }
    return out;
}

Recording recording(std::vector<float> samples, std::optional<Lufs> loudness = {}, int channels = 1) {
    return {std::make_unique<MemorySound>(std::move(samples), SampleRate{kRate}, channels), loudness};
}

compare::Stretch stretch(std::vector<compare::Pair> knots) {
    compare::Stretch out;
    out.knots = std::move(knots);
    return out;
}

/// Its next block.
void append(InStep& sound, std::vector<float>& to) {
    const auto block = sound.read();
    REQUIRE(block);
    to.insert(to.end(), block->samples.begin(), block->samples.end());
}

/// The loudness that a whole recording has.
std::optional<Lufs> loudness_of(std::vector<float> samples, int channels) {
    MemorySound sound(std::move(samples), SampleRate{kRate}, channels);
    voice::LoudnessMeter meter(sound.format());
    while (const auto block = sound.read())
        meter.add(*block);
    return meter.summary().integrated;
}

} // namespace

TEST_CASE("bursts in another tempo and at another rate begin together on both sides, at any speed") {
    const double speed = GENERATE(1.0, 0.5, 0.25);
    const double slower = GENERATE(0.6, 1.5);
    CAPTURE(speed, slower);
    const Bursts a = bursts(1, 1, {kRate}), b = bursts(slower, 2, {48000});
    const Offsets found = burst_offsets(played(in_step(a, b), speed), {kRate}, a.starts, speed);
    CHECK(found.notes >= 27);
    CHECK(found.median_ms < 9 / speed); // the detector's own doubt is in it
    CHECK(found.p95_ms < 20 / speed);
}

TEST_CASE("the left is the first performance, sample for sample") {
    const Bursts a = bursts(1, 3, {kRate}), b = bursts(1.3, 4, {kRate});
    CHECK(side(played(in_step(a, b), 1), 0) == a.samples);
}

TEST_CASE("begun anywhere it has on the right what a run from the start has there") {
    const Bursts a = bursts(1, 5, {kRate}), b = bursts(1.4, 6, {kRate});
    const auto whole = side(played(in_step(a, b), 1), 1);
    InStep sound = in_step(a, b);
    for (const double t : {9.3, 2.02, 5.5, 0.5}) {
        CAPTURE(t);
        const auto first = static_cast<std::size_t>(t * kRate);
        sound.go_to(static_cast<std::int64_t>(first));
        std::vector<float> part;
        while (part.size() < std::size_t{2} * kRate)
            append(sound, part);
        const auto here = side(part, 1);
        // Frames fall elsewhere, so the samples differ; how loud it is every 20 ms doesn't.
        for (std::size_t i = 0; i + 882 < here.size(); i += 882)
            CHECK(rms(std::span(here).subspan(i, 882)) ==
                  Approx(rms(std::span(whole).subspan(first + i, 882))).margin(0.04));
    }
}

TEST_CASE("to begin anywhere it reads less than a second of the second performance") {
    const Bursts a = bursts(1, 5, {kRate}), b = bursts(1.4, 6, {kRate});
    auto second = std::make_unique<MemorySound>(b.samples, b.rate);
    const MemorySound& watched = *second;
    InStep sound({std::make_unique<MemorySound>(a.samples, a.rate), {}}, {std::move(second), {}},
                 alignment_of(a, b), false);
    for (const double t : {9.3, 2.0, 5.5}) {
        const std::size_t before = watched.handed();
        sound.go_to(std::llround(t * kRate));
        std::vector<float> first;
        append(sound, first);
        CHECK(first.size() > 1000);
        CHECK(watched.handed() - before < kRate);
    }
}

TEST_CASE("without counterpart the right is silent, and what only the second has is left out") {
    // B: 3 s of 220 Hz, 2 s of 330 Hz that A doesn't have, 3 s of 440 Hz; A: the two with a gap of 2 s.
    std::vector<float> b = tone(3, 220, 0.3);
    for (const auto& more : {tone(2, 330, 0.3), tone(3, 440, 0.3)})
        b.insert(b.end(), more.begin(), more.end());
    compare::Alignment alignment;
    alignment.stretches = {stretch({{1_s, 0_s}, {4_s, 3_s}}), stretch({{6_s, 5_s}, {9_s, 8_s}})};
    InStep sound(recording(tone(10, 250, 0.2)), recording(b), alignment, false);
    CHECK(sound.expected_duration() == 10_s);
    const auto heard = played(std::move(sound), 1);
    REQUIRE(heard.size() == std::size_t{20} * kRate);
    CHECK(level(heard, 1, 0, 0.97) == 0);
    CHECK(level(heard, 1, 1.05, 3.95) == Approx(0.3 / std::sqrt(2)).epsilon(0.05));
    CHECK(level(heard, 1, 4.03, 5.97) == 0);
    CHECK(level(heard, 1, 6.05, 8.95) == Approx(0.3 / std::sqrt(2)).epsilon(0.05));
    CHECK(level(heard, 1, 9.03, 10) == 0);
    CHECK(level(heard, 0, 0, 10) == Approx(0.2 / std::sqrt(2)).epsilon(0.01));
    reference::AubioPitch tracker("yinfast");
    const auto pitch = tracker.track(side(heard, 1));
    CHECK(pitch.at(3_s)->value() == Approx(220).epsilon(0.01));
    CHECK(pitch.at(7.5_s)->value() == Approx(440).epsilon(0.01));
}

TEST_CASE("transposed, the second is heard in the first one's key and tuning") {
    compare::Alignment alignment;
    alignment.semitones = GENERATE(-7, 5, 12);
    alignment.tuning = Cents(30);
    alignment.stretches = {stretch({{0_s, 0_s}, {4_s, 4_s}})};
    const double higher = std::exp2(alignment.semitones / 12.0 + 30.0 / 1200);
    const auto b = rich_tone(4, 250 * higher);
    reference::AubioPitch tracker("yinfast");
    for (const bool transposed : {false, true}) {
        CAPTURE(alignment.semitones, transposed);
        const auto heard =
            played(InStep(recording(rich_tone(4, 250)), recording(b), alignment, transposed), 1);
        CHECK(tracker.track(side(heard, 1)).at(2_s)->value() ==
              Approx(transposed ? 250 : 250 * higher).epsilon(0.005));
    }
}

TEST_CASE("both sides are equally loud by EBU R 128, the louder one turned down") {
    const int channels = GENERATE(1, 2);
    CAPTURE(channels);
    const auto a = tone(6, 997, 0.5), b = tone(6, 997, 0.1, channels);
    compare::Alignment alignment;
    alignment.stretches = {stretch({{0_s, 0_s}, {6_s, 6_s}})};
    const auto heard = played(InStep(recording(a, loudness_of(a, 1)),
                                     recording(b, loudness_of(b, channels), channels), alignment, false),
                              1);
    const auto left = loudness_of(side(heard, 0), 1), right = loudness_of(side(heard, 1), 1);
    CHECK(left->value() == Approx(right->value()).margin(0.2));
    CHECK(right->value() == Approx(loudness_of(tone(6, 997, 0.1), 1)->value()).margin(0.2));
    const auto unknown = played(InStep(recording(a), recording(b, {}, channels), alignment, false), 1);
    CHECK(level(unknown, 0, 1, 5) == Approx(0.5 / std::sqrt(2)).epsilon(0.01));
}
