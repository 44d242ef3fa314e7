// Whether somebody sings at all among instruments.
#include "scenes/small_band.h"
#include "scenes/songs.h"
#include "scenes/tones.h"
#include "voice/hear.h"
#include "voice/likeness.h"
#include "voice/presence.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace luft;
using namespace luft::voice;

namespace {

constexpr SampleRate kRate{44100};
constexpr Seconds kLeadIn{7};

/// A bowed string leads over chords for seven seconds, then a singer does.
struct Mix {
    std::vector<float> samples; ///< left right
    Curve<Hertz> truth;         ///< from the end of the lead-in on
};

Mix with_lead_in(singer::VoiceType voice, std::uint64_t seed) {
    auto sung = scenes::sing({.voice = voice, .seed = seed, .phrases = 3});
    sung.samples.insert(sung.samples.begin(), static_cast<std::size_t>(kLeadIn.value() * kRate.per_second),
                        0.0F);
    sung.truth.duration = sung.truth.duration + kLeadIn;
    std::vector<singer::Tone> lead;
    const double lowest = voice == singer::VoiceType::tenor ? 56 : 63;
    for (int k = 0; k < 9; ++k)
        lead.push_back(
            {singer::Instrument::bowed, Seconds(0.3 + 0.7 * k), Seconds(0.66),
             MidiPitch(lowest + std::array{0, 2, 4, 5, 7, 5, 4, 2, 0}[static_cast<std::size_t>(k)]),
             Decibels(2)});
    singer::Stereo band = scenes::small_band(sung, {.drums = true}, seed);
    const singer::Stereo bowed = singer::play(lead, sung.truth.duration, kRate, seed);
    scenes::add(band.left, bowed.left), scenes::add(band.right, bowed.right);
    return {singer::mix(sung.samples, band, Decibels(3), kRate), sung.truth.f0};
}

} // namespace

// Measured 0.638 and 0.958; by likeness alone, 0.906 of the lead-in was claimed.
TEST_CASE("of a bowed string that leads before the singer comes in, a part is left out that likeness alone "
          "claims") {
    double lead_in = 0, claimed = 0, sung = 0, kept = 0;
    for (const auto voice : {singer::VoiceType::tenor, singer::VoiceType::alto})
        for (const std::uint64_t seed : {701U, 702U, 703U}) {
            const Mix mix = with_lead_in(voice, seed);
            singer::MemorySource source(mix.samples, kRate, 2);
            const Curve<Hertz> line = hear(source, Setting::accompanied).curves.f0;
            const auto first = static_cast<std::int64_t>(kLeadIn / kHop);
            for (std::int64_t i = 0; i < first; ++i)
                ++lead_in, claimed += line.at(FrameIndex{i}) ? 1 : 0;
            for (std::int64_t i = 0; i < static_cast<std::int64_t>(mix.truth.size()); ++i)
                if (mix.truth.at(FrameIndex{i})) ++sung, kept += line.at(FrameIndex{first + i}) ? 1 : 0;
        }
    CAPTURE(claimed / lead_in, kept / sung);
    CHECK(claimed / lead_in < 0.75);
    CHECK(kept / sung > 0.93);
}

TEST_CASE("presence moves the candidates of a frame alike, to where they together have its odds") {
    const Mix mix = with_lead_in(singer::VoiceType::alto, 704);
    singer::MemorySource source(mix.samples, kRate, 2);
    const FirstPass pass = first_pass(source, {});
    const auto before = voice_likeness(pass.harmonic, pass.claims);
    const auto features = presence_features(pass, before);
    const auto after = voice_presence(pass, before);
    REQUIRE(features.size() == pass.harmonic.frames());
    REQUIRE(after.size() == before.size());
    std::size_t checked = 0;
    for (std::size_t i = 0, first = 0; i < features.size(); first += pass.harmonic.at(i).size(), ++i) {
        const std::size_t count = pass.harmonic.at(i).size();
        double together = 0;
        for (std::size_t c = first; c < first + count; ++c) {
            together += std::exp(double(after[c]));
            REQUIRE(after[c] - after[first] == Approx(before[c] - before[first]).margin(1e-3));
        }
        if (count == 0) continue;
        REQUIRE(std::log(together) == Approx(presence(features[i])).margin(1e-3));
        ++checked;
    }
    CHECK(checked > 1000);
}
