// The sung pitch line on tones and songs whose pitch is known, beside an independent library's trackers.
#include "reference/aubio_pitch.h"
#include "reference/melody_metric.h"
#include "scenes/songs.h"
#include "scenes/tones.h"
#include "voice/hear.h"

#include <catch2/catch.hpp>

#include <cstdio>

using namespace luft;
using namespace luft::voice;

namespace {

constexpr SampleRate kRate{44100};

Hearing hear_alone(std::vector<float> samples, SampleRate rate = kRate) {
    singer::MemorySource source(std::move(samples), rate);
    return hear(source, Setting::alone);
}

/// Raw pitch accuracy asked for: 0.01 under what was measured on songs 101 to 103 (see [figures]). Most of
/// what is missing are glides between notes and the first and last 20 ms of a tone.
struct Pin {
    singer::VoiceType voice;
    double raw_pitch;
};
constexpr std::array<Pin, 4> kPins{{{singer::VoiceType::bass, 0.964},      // measured 0.974
                                    {singer::VoiceType::tenor, 0.977},     // 0.987
                                    {singer::VoiceType::alto, 0.976},      // 0.985
                                    {singer::VoiceType::soprano, 0.964}}}; // 0.973
constexpr auto kSongs = {101, 102, 103};
const char* name_of(singer::VoiceType v) {
    constexpr std::array<const char*, 5> kNames{"bass", "tenor", "countertenor", "alto", "soprano"};
    return kNames[static_cast<std::size_t>(v)];
}

struct Compared {
    reference::MelodyTally ours, yinfft, yin;
};

/// The curve so many frames earlier.
Curve<Hertz> shifted(const Curve<Hertz>& curve, std::size_t ahead) {
    const auto rest = curve.raw().subspan(std::min(ahead, curve.size()));
    return Curve<Hertz>(std::vector<float>(rest.begin(), rest.end()));
}

/// Ours and aubio's on the same songs. Aubio gets, for each voice, the shift in time that suits it best.
Compared compare(singer::VoiceType voice) {
    Compared all;
    std::array<reference::MelodyTally, 4> yinfft, yin;
    for (const int seed : kSongs) {
        const auto sung =
            scenes::sing({.voice = voice, .seed = static_cast<std::uint64_t>(seed), .phrases = 3});
        all.ours.add(sung.truth.f0, hear_alone(sung.samples).curves.f0);
        const auto by_yinfft = reference::AubioPitch("yinfft").track(sung.samples);
        const auto by_yin = reference::AubioPitch("yinfast").track(sung.samples);
        for (std::size_t ahead = 1; ahead <= yin.size(); ++ahead) {
            yinfft[ahead - 1].add(sung.truth.f0, shifted(by_yinfft, ahead));
            yin[ahead - 1].add(sung.truth.f0, shifted(by_yin, ahead));
        }
    }
    const auto better = [](const auto& a, const auto& b) {
        return a.score().raw_pitch < b.score().raw_pitch;
    };
    all.yinfft = *std::ranges::max_element(yinfft, better);
    all.yin = *std::ranges::max_element(yin, better);
    return all;
}

} // namespace

TEST_CASE("a sine of every semitone from A1 to F6 is heard at its pitch, within 3 cents") {
    std::vector<float> x;
    for (int midi = 33; midi <= 89; ++midi) {
        scenes::append(
            x, scenes::faded(scenes::sine(frequency_of(MidiPitch(midi)), 0.2, Seconds(0.3), kRate), kRate));
        scenes::append(x, scenes::silence(Seconds(0.1), kRate));
    }
    const auto f0 = hear_alone(x).curves.f0;
    for (int k = 0; k <= 56; ++k) {
        CAPTURE(k + 33);
        for (double t = 0.4 * k + 0.08; t < 0.4 * k + 0.22; t += 0.01) {
            const auto said = f0.at(Seconds(t));
            REQUIRE(said);
            CHECK(interval(frequency_of(MidiPitch(k + 33)), *said).value() == Approx(0).margin(3));
        }
        CHECK_FALSE(f0.at(Seconds(0.4 * k + 0.35)));
    }
}

TEST_CASE("the pitch of a vibrato tone is followed through its swing") {
    // Smoothed by the 43 ms that each frame looks at, +-80 cents at 5.5 Hz lose about a tenth.
    const auto pitch = [](double t) {
        return 220 * std::exp2(80.0 / 1200 * std::sin(2 * std::numbers::pi * 5.5 * t));
    };
    const auto x = scenes::faded(scenes::partial_tone(
                                     pitch, [](int h) { return 0.2 / h; }, Seconds(3), kRate, 5000),
                                 kRate);
    const auto f0 = hear_alone(x).curves.f0;
    double worst = 0;
    for (double t = 0.1; t < 2.9; t += 0.01) {
        const auto said = f0.at(Seconds(t));
        REQUIRE(said);
        worst = std::max(worst, std::abs(interval(Hertz(pitch(t)), *said).value()));
    }
    CHECK(worst < 25);
}

TEST_CASE("sung pitch is found with the accuracy that was measured, in every voice type, and no worse than "
          "libaubio's "
          "trackers find it") {
    for (const auto& [voice, least] : kPins) {
        CAPTURE(name_of(voice));
        const auto found = compare(voice);
        const auto ours = found.ours.score();
        REQUIRE(ours.voiced_frames > 2000);
        CHECK(ours.raw_pitch >= least);
        CHECK(ours.raw_pitch >= found.yinfft.score().raw_pitch);
        CHECK(ours.raw_pitch >= found.yin.score().raw_pitch);
        CHECK(ours.raw_chroma - ours.raw_pitch < 0.005); // no octave errors worth the name
        CHECK(ours.voicing_recall >= 0.97);              // measured 0.979 to 0.990
        CHECK(ours.voicing_false_alarm <= 0.04);         // measured 0.009 to 0.027
        CHECK(ours.overall >= 0.96);                     // measured 0.972 to 0.980
    }
}

TEST_CASE("figures: pitch of songs", "[.][figures]") {
    std::printf("%-10s %8s %8s %8s %8s %8s %8s %8s\n", "voice", "raw", "chroma", "recall", "false", "overall",
                "yinfft", "yinfast");
    for (const auto& [voice, least] : kPins) {
        const auto found = compare(voice);
        const auto s = found.ours.score();
        std::printf("%-10s %8.4f %8.4f %8.4f %8.4f %8.4f %8.4f %8.4f\n", name_of(voice), s.raw_pitch,
                    s.raw_chroma, s.voicing_recall, s.voicing_false_alarm, s.overall,
                    found.yinfft.score().raw_pitch, found.yin.score().raw_pitch);
    }
}
