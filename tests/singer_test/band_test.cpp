#include "singer/band.h"
#include "singer/room.h"
#include "singer_test/measure.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::singer;

TEST_CASE("The band's strings and keys are in tune") {
    constexpr SampleRate kRate{44100};
    for (const auto instrument : {Instrument::plucked, Instrument::bass, Instrument::struck})
        for (const double pitch : {40.0, 57.0, 64.0}) {
            CAPTURE(int(instrument), pitch);
            const auto x = tone(instrument, MidiPitch(pitch), Seconds(1), kRate, Random(3));
            const Hertz f = frequency_of(MidiPitch(pitch));
            const auto part = cut(x, kRate, {Seconds(0.3), Seconds(0.5)});
            CHECK(interval(f, pitch_near(part, kRate, f)).value() == Approx(0).margin(6));
        }
}

TEST_CASE("The band's sounding strings are in tune, and sound on") {
    constexpr SampleRate kRate{44100};
    for (const auto instrument : {Instrument::bowed, Instrument::pad})
        for (const double pitch : {50.0, 57.0, 69.0}) {
            CAPTURE(int(instrument), pitch);
            const auto x = tone(instrument, MidiPitch(pitch), Seconds(1.2), kRate, Random(3));
            const Hertz f = frequency_of(MidiPitch(pitch));
            const auto early = cut(x, kRate, {Seconds(0.3), Seconds(0.7)}),
                       late = cut(x, kRate, {Seconds(0.7), Seconds(1.1)});
            CHECK(interval(f, pitch_near(late, kRate, f)).value() ==
                  Approx(0).margin(10));                  // vibrato and beats
            CHECK((rms(late) - rms(early)).value() > -4); // beats swing it; a plucked string loses 9
        }
}

TEST_CASE("The voice stands over the band by the level asked for") {
    constexpr SampleRate kRate{44100};
    std::vector<float> voice(88200);
    for (std::size_t n = 22050; n < 66150; ++n)
        voice[n] = static_cast<float>(0.1 * std::sin(2 * M_PI * 300 * double(n) / 44100));
    const std::vector<Chord> chords{{MidiPitch(45), {MidiPitch(57), MidiPitch(61), MidiPitch(64)}, 4}};
    const auto band = play(accompany(chords, {.beat = Seconds(0.5)}), Seconds(2), kRate, 1);
    const auto both = mix(voice, band, Decibels(6), kRate);
    REQUIRE(both.size() == 2 * voice.size());
    double rest = 0, sung = 0;
    for (std::size_t n = 22050; n < 66150; ++n)
        for (const std::size_t side : {0, 1}) {
            const double b = double(both[2 * n + side]) - double(voice[n]);
            rest += b * b, sung += double(voice[n]) * voice[n];
        }
    CHECK(power_level(sung / rest).value() == Approx(6).margin(0.05));
}
