// Loudness against the minimum requirements of EBU Tech 3341 and EBU Tech 3342.
#include "base/error.h"
#include "reference/loudness_signals.h"
#include "scenes/tones.h"
#include "voice/loudness.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::voice;
using namespace luft::reference;

namespace {

constexpr Hertz kTone{1000};

double amplitude(double peak_dbfs) {
    return peak_dbfs <= kSilent ? 0 : std::pow(10.0, peak_dbfs / 20);
}

/// The same tone in both channels, interleaved.
std::vector<float> stereo(std::span<const ToneStretch> parts, SampleRate rate) {
    std::vector<float> x;
    std::size_t n = 0;
    double until = 0; // summed in seconds, so that parts of a fraction of a sample don't add up to a shift
    for (const ToneStretch& part : parts) {
        until += part.seconds;
        const auto end = static_cast<std::size_t>(std::llround(until * rate.per_second));
        for (; n < end; ++n) {
            const auto v = static_cast<float>(
                amplitude(part.peak_dbfs) *
                std::sin(2 * std::numbers::pi * kTone.value() * static_cast<double>(n) / rate.per_second));
            x.push_back(v);
            x.push_back(v);
        }
    }
    return x;
}

AudioFormat stereo_format(SampleRate rate) {
    return {rate, {ChannelRole::left, ChannelRole::right}};
}

struct Reading {
    double time; ///< when it was read
    std::optional<Lufs> momentary, short_term;
};

/// Feeds the samples to the meter 10 ms at a time and reads it after each, as Tech 3341 has the live meters
/// read.
std::vector<Reading> read_live(LoudnessMeter& meter, std::span<const float> x, SampleRate rate,
                               std::optional<Lufs> Reading::*which) {
    constexpr std::size_t channels = 2;
    std::vector<Reading> readings;
    std::size_t done = 0;
    for (int hop = 1; done * channels < x.size(); ++hop) {
        const auto end = std::min(static_cast<std::size_t>(std::llround(hop * 0.01 * rate.per_second)),
                                  x.size() / channels);
        meter.add({static_cast<std::int64_t>(done), x.subspan(done * channels, (end - done) * channels)});
        done = end;
        readings.push_back(
            {static_cast<double>(done) / rate.per_second,
             which == &Reading::momentary ? meter.momentary_now() : std::nullopt,
             which == &Reading::short_term && hop % 5 == 0 ? meter.short_term() : std::nullopt});
    }
    return readings;
}

Loudness summary_of(std::span<const float> x, const AudioFormat& format) {
    LoudnessMeter meter(format);
    meter.add({0, x});
    return meter.summary();
}

double highest(const std::vector<Reading>& readings, std::optional<Lufs> Reading::*which, double from,
               double to) {
    double most = -300;
    for (const Reading& r : readings)
        if (r.time > from && r.time <= to && r.*which) most = std::max(most, (r.*which)->value());
    return most;
}

const SampleRate kRates[] = {{48000}, {44100}};

} // namespace

TEST_CASE("EBU Tech 3341, cases 1 to 5: integrated loudness with its gates") {
    for (const SampleRate rate : kRates)
        for (const ToneCase& c : kIntegratedCases) {
            if (rate != kRates[0] && c.parts[1].seconds > 0) continue; // the long ones at one rate only
            CAPTURE(c.name, rate.per_second);
            const auto loudness = summary_of(stereo(c.parts, rate), stereo_format(rate));
            REQUIRE(loudness.integrated);
            CHECK(std::abs(loudness.integrated->value() - c.expected) <= kLoudnessTolerance);
        }
}

TEST_CASE("EBU Tech 3341, cases 1 and 2: momentary and short-term loudness of a steady tone") {
    for (const SampleRate rate : kRates)
        for (const ToneCase& c : {kIntegratedCases[0], kIntegratedCases[1]}) {
            CAPTURE(c.name, rate.per_second);
            for (const auto which : {&Reading::momentary, &Reading::short_term}) {
                LoudnessMeter meter(stereo_format(rate));
                int read = 0;
                for (const Reading& r : read_live(meter, stereo(c.parts, rate), rate, which))
                    if (r.time > 3 && r.*which) {
                        CHECK(std::abs((r.*which)->value() - c.expected) <= kLoudnessTolerance);
                        ++read;
                    }
                CHECK(read >= 300);
            }
        }
}

TEST_CASE("EBU Tech 3341, case 6: five channels, with the surrounds' weight") {
    using enum ChannelRole;
    for (const SampleRate rate : kRates) {
        CAPTURE(rate.per_second);
        const std::array<double, 5> levels{kCase6Front, kCase6Front, kCase6Centre, kCase6Surround,
                                           kCase6Surround};
        const auto tone = scenes::sine(kTone, 1, Seconds(20), rate);
        std::vector<float> x;
        for (const float v : tone)
            for (const double level : levels)
                x.push_back(static_cast<float>(v * amplitude(level)));
        const auto loudness = summary_of(x, {rate, {left, right, centre, surround_left, surround_right}});
        REQUIRE(loudness.integrated);
        CHECK(std::abs(loudness.integrated->value() + 23.0) <= kLoudnessTolerance);
    }
}

TEST_CASE("EBU Tech 3341, case 9: short-term loudness is constant over a pattern of three seconds") {
    for (const SampleRate rate : kRates) {
        CAPTURE(rate.per_second);
        std::vector<ToneStretch> parts;
        for (int i = 0; i < kCase9.times; ++i)
            parts.insert(parts.end(), {kCase9.loud, kCase9.soft});
        LoudnessMeter meter(stereo_format(rate));
        int read = 0;
        for (const Reading& r : read_live(meter, stereo(parts, rate), rate, &Reading::short_term))
            if (r.time > kCase9.constant_after && r.short_term) {
                CHECK(std::abs(r.short_term->value() + 23.0) <= kLoudnessTolerance);
                ++read;
            }
        CHECK(read >= 200);
    }
}

TEST_CASE("EBU Tech 3341, case 12: momentary loudness is constant over a pattern of 0.4 s") {
    for (const SampleRate rate : kRates) {
        CAPTURE(rate.per_second);
        std::vector<ToneStretch> parts;
        for (int i = 0; i < kCase12.times; ++i)
            parts.insert(parts.end(), {kCase12.loud, kCase12.soft});
        LoudnessMeter meter(stereo_format(rate));
        for (const Reading& r : read_live(meter, stereo(parts, rate), rate, &Reading::momentary))
            if (r.time > kCase12.constant_after) {
                REQUIRE(r.momentary);
                CHECK(std::abs(r.momentary->value() + 23.0) <= kLoudnessTolerance);
            }
    }
}

TEST_CASE("EBU Tech 3341, cases 10 and 13: the highest reading doesn't depend on where a tone begins") {
    for (const SampleRate rate : kRates)
        for (int i = 0; i < 20; i += rate == kRates[0] ? 1 : 7)
            for (const bool momentary : {false, true}) {
                const ShiftCase& c = momentary ? kMomentaryShift : kShortTermShift;
                CAPTURE(rate.per_second, i, momentary);
                const std::vector<ToneStretch> parts{{c.step * i, kSilent}, {c.tone, -23}, {1, kSilent}};
                LoudnessMeter meter(stereo_format(rate));
                const auto which = momentary ? &Reading::momentary : &Reading::short_term;
                const double most = highest(read_live(meter, stereo(parts, rate), rate, which), which, 0, 99);
                CHECK(std::abs(most + 23.0) <= kLoudnessTolerance);
            }
}

TEST_CASE("EBU Tech 3341, cases 11 and 14: the highest readings of twenty tones that rise by 1 dB each") {
    for (const SampleRate rate : kRates)
        for (const bool momentary : {false, true}) {
            if (rate != kRates[0] && !momentary) continue; // two minutes
            const ShiftCase& c = momentary ? kMomentaryShift : kShortTermShift;
            std::vector<ToneStretch> parts;
            for (int i = 0; i < 20; ++i)
                parts.insert(parts.end(),
                             {{c.step * i, kSilent}, {c.tone, -38.0 + i}, {c.tone - c.step * i, kSilent}});
            LoudnessMeter meter(stereo_format(rate));
            const auto which = momentary ? &Reading::momentary : &Reading::short_term;
            const auto readings = read_live(meter, stereo(parts, rate), rate, which);
            for (int i = 0; i < 20; ++i) {
                CAPTURE(rate.per_second, momentary, i);
                const double most =
                    highest(readings, which, 2 * c.tone * i + 1e-6, 2 * c.tone * (i + 1) + 1e-6);
                CHECK(std::abs(most - (-38.0 + i)) <= kLoudnessTolerance);
            }
        }
}

TEST_CASE("EBU Tech 3341, cases 15 to 19: true peak between the samples") {
    for (const SampleRate rate : kRates)
        for (const PeakCase& c : kPeakCases) {
            CAPTURE(c.name, rate.per_second);
            // Faded, since a tone that starts at full strength overshoots by itself when its band is limited.
            const auto mono =
                scenes::faded(scenes::sine(Hertz(static_cast<double>(rate.per_second) / c.divisor),
                                           c.amplitude, Seconds(1), rate, c.phase_degrees),
                              rate);
            std::vector<float> x;
            for (const float v : mono)
                x.insert(x.end(), {v, v});
            const auto loudness = summary_of(x, stereo_format(rate));
            REQUIRE(loudness.true_peak);
            CHECK(loudness.true_peak->value() <= c.expected + kPeakAbove);
            CHECK(loudness.true_peak->value() >= c.expected - kPeakBelow);
        }
}

TEST_CASE("EBU Tech 3342, cases 1 to 4: loudness range") {
    for (const SampleRate rate : kRates)
        for (const ToneCase& c : kRangeCases) {
            if (rate != kRates[0] && c.parts[2].seconds > 0) continue;
            CAPTURE(c.name, rate.per_second);
            const auto loudness = summary_of(stereo(c.parts, rate), stereo_format(rate));
            REQUIRE(loudness.range);
            CHECK(std::abs(loudness.range->value() - c.expected) <= kRangeTolerance);
        }
}

TEST_CASE("a full-scale sine of 997 Hz in one channel has -3.01 LUFS, in both 0.00 (BS.1770-4)") {
    for (const SampleRate rate : kRates) {
        CAPTURE(rate.per_second);
        const auto tone = scenes::sine(Hertz(997), 1, Seconds(5), rate);
        std::vector<float> one, both;
        for (const float v : tone) {
            one.insert(one.end(), {v, 0.0F});
            both.insert(both.end(), {v, v});
        }
        CHECK(summary_of(one, stereo_format(rate)).integrated->value() == Approx(-3.01).margin(0.02));
        CHECK(summary_of(both, stereo_format(rate)).integrated->value() == Approx(0.00).margin(0.02));
        CHECK(summary_of(tone, {rate, {ChannelRole::centre}}).integrated->value() ==
              Approx(-3.01).margin(0.02));
    }
}

TEST_CASE("the low-frequency channel doesn't count") {
    using enum ChannelRole;
    constexpr SampleRate kRate{48000};
    const auto tone = scenes::sine(kTone, 0.5, Seconds(3), kRate);
    std::vector<float> x;
    for (const float v : tone)
        x.insert(x.end(), {v, v, v, v});
    const auto with = summary_of(x, {kRate, {left, right, centre, low_frequency}});
    for (std::size_t i = 3; i < x.size(); i += 4)
        x[i] = 0;
    const auto without = summary_of(x, {kRate, {left, right, centre, low_frequency}});
    REQUIRE(with.integrated);
    CHECK(*with.integrated == *without.integrated);
}

TEST_CASE("silence, and less than one window of sound, have no loudness") {
    constexpr SampleRate kRate{44100};
    const auto silent = summary_of(scenes::silence(Seconds(5), kRate), {kRate, {ChannelRole::centre}});
    CHECK_FALSE(silent.integrated);
    CHECK_FALSE(silent.range);
    CHECK_FALSE(silent.true_peak);
    const auto faint =
        summary_of(scenes::sine(kTone, 1e-4, Seconds(5), kRate), {kRate, {ChannelRole::centre}});
    CHECK_FALSE(faint.integrated); // -83 LUFS, under the absolute gate
    const auto brief =
        summary_of(scenes::sine(kTone, 0.5, Seconds(0.3), kRate), {kRate, {ChannelRole::centre}});
    CHECK_FALSE(brief.integrated);
    CHECK(brief.true_peak);
}

TEST_CASE("a value of the momentary curve stands at the middle of its window") {
    for (const SampleRate rate : kRates) {
        CAPTURE(rate.per_second);
        // 0.4 s of tone from 1.0 s on: the window that holds all of it is centred on 1.2 s.
        auto x = scenes::silence(Seconds(1), rate);
        scenes::append(x, scenes::sine(kTone, 0.5, Seconds(0.4), rate));
        scenes::append(x, scenes::silence(Seconds(1), rate));
        LoudnessMeter meter({rate, {ChannelRole::centre}});
        meter.add({0, x});
        const auto curve = meter.momentary(240);
        REQUIRE(curve.size() == 240);
        const auto top =
            std::ranges::max_element(curve.raw(), {}, [](float v) { return std::isnan(v) ? -300 : v; });
        CHECK(top - curve.raw().begin() == 120);
        CHECK(*top == Approx(-9.03).margin(0.05)); // -3.01 - 6.02
        // Half of the window full is 3.01 dB less, on both sides.
        CHECK(curve.at(Seconds(1.0))->value() == Approx(*top - 3.01).margin(0.05));
        CHECK(curve.at(Seconds(1.4))->value() == Approx(*top - 3.01).margin(0.05));
        CHECK_FALSE(curve.at(Seconds(0.75)));
        CHECK_FALSE(curve.at(Seconds(1.65)));
        CHECK_FALSE(curve.at(FrameIndex{19})); // its window would begin before the recording
        CHECK_FALSE(curve.at(FrameIndex{239}));
    }
}

TEST_CASE("the readings don't depend on how the samples are cut into blocks") {
    constexpr SampleRate kRate{44100};
    const auto x = scenes::noise(0.1, Seconds(3), kRate, 4);
    LoudnessMeter whole({kRate, {ChannelRole::centre}}), pieces({kRate, {ChannelRole::centre}});
    whole.add({0, x});
    for (std::size_t i = 0; i < x.size(); i += 777)
        pieces.add({static_cast<std::int64_t>(i),
                    std::span(x).subspan(i, std::min<std::size_t>(777, x.size() - i))});
    CHECK(whole.summary().integrated == pieces.summary().integrated);
    const auto a = whole.momentary(300), b = pieces.momentary(300);
    for (std::int64_t i = 0; i < 300; ++i)
        CHECK(a.at(FrameIndex{i}) == b.at(FrameIndex{i}));
}
