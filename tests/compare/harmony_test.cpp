// Pitch classes of known tones, and alignment by them alone.
#include "compare/align.h"
#include "scenes/tones.h"
#include "singer/band.h"
#include "singer/memory_source.h"
#include "singer/random.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::compare;

namespace {

constexpr SampleRate kRate{44100};

Harmony harmony_of(std::vector<float> samples, Hertz tuning = Hertz(440)) {
    singer::MemorySource source(std::move(samples), kRate);
    return hear_harmony(source, tuning);
}

int strongest(const PitchClasses& c) {
    return static_cast<int>(std::ranges::max_element(c) - c.begin());
}

/// Chords by chance, each of its own length, played without a voice; when each begins.
struct Played {
    Side side;
    std::vector<Seconds> begins;
};

Played play(std::uint64_t seed, int chords, double beat, int semitones, singer::Instrument instrument) {
    singer::Random random(seed);
    std::vector<singer::Tone> tones;
    Played out;
    Seconds t(0.5);
    for (int i = 0; i < chords; ++i) {
        const int root = 45 + static_cast<int>(random.uniform() * 12) + semitones;
        const int third = random.uniform() < 0.5 ? 3 : 4;
        const Seconds length(beat * (2 + std::floor(random.uniform() * 3)));
        out.begins.push_back(t);
        for (const int step : {0, 12, 12 + third, 19})
            tones.push_back(
                {.instrument = instrument, .at = t, .length = length, .pitch = MidiPitch(root + step)});
        t += length;
    }
    const singer::Stereo sound = singer::play(tones, t + Seconds(0.5), kRate, seed);
    out.side.duration = t + Seconds(0.5);
    out.side.f0 = Curve<Hertz>(static_cast<std::size_t>(out.side.duration / kHop));
    out.side.harmony = harmony_of(sound.left);
    return out;
}

} // namespace

TEST_CASE("a tone is heard as its own pitch class, at the tuning that is given") {
    for (int pitch = 45; pitch < 81; pitch += 5) { // from A2: below it the bins are wider than a semitone
        const Harmony h = harmony_of(scenes::sine(frequency_of(MidiPitch(pitch)), 0.3, Seconds(2), kRate));
        REQUIRE(h.columns.size() >= 20);
        CHECK(strongest(h.columns[10]) == pitch % 12);
        CHECK(h.columns[10][static_cast<std::size_t>(pitch % 12)] > 0.8F);
    }
    // 40 cents above A4 = 440 Hz is still an A; against A4 = 415 Hz, a semitone lower, the same tone is a B
    // flat.
    const auto sharp = scenes::sine(Hertz(440 * std::exp2(0.4 / 12)), 0.3, Seconds(2), kRate);
    CHECK(strongest(harmony_of(sharp).columns[10]) == 9);
    CHECK(strongest(harmony_of(sharp, Hertz(415)).columns[10]) == 10);
}

TEST_CASE("harmony stands at its time, and silence has none") {
    std::vector<float> sound = scenes::silence(Seconds(3), kRate);
    const auto tone = scenes::sine(Hertz(440), 0.3, Seconds(2), kRate);
    sound.insert(sound.begin() + kRate.per_second, tone.begin(), tone.end());
    const Harmony h = harmony_of(sound); // tone from 1 s to 3 s, silence to 5 s
    CHECK(h.columns.size() == 51);
    const auto sounds = [&](std::size_t i) { return h.columns[i][9] > 0; };
    CHECK_FALSE(sounds(7));
    CHECK(sounds(10));
    CHECK(sounds(29));
    CHECK_FALSE(sounds(33));
    CHECK(harmony_of(scenes::silence(Seconds(1), kRate)).columns[5] == PitchClasses{});
}

TEST_CASE("where nobody sings, chords are aligned, in another key and tempo and on another instrument") {
    const int key = GENERATE(0, 3, -4);
    for (const std::uint64_t seed : {1, 2}) {
        CAPTURE(key, seed);
        const Played a = play(seed, 24, 0.5, 0, singer::Instrument::plucked),
                     b = play(seed, 24, 0.42, key, singer::Instrument::struck);
        const Alignment found = align(a.side, b.side);
        CHECK(found.semitones == key);
        std::vector<double> errors;
        for (std::size_t i = 0; i < a.begins.size(); ++i)
            if (const auto there = found.to_b(a.begins[i]))
                errors.push_back(std::abs((*there - b.begins[i]).value()));
        REQUIRE(errors.size() >= 22);
        std::ranges::sort(errors);
        CHECK(errors[errors.size() / 2] < 0.1);
        CHECK(errors[errors.size() * 9 / 10] < 0.3);
    }
}
