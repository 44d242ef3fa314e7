// Songs by chance, sung by the test voice: what the ear's accuracy is measured on. Their seeds are used for
// tests only, never for tuning.
#pragma once

#include "singer/random.h"
#include "singer/singer.h"

#include <array>

namespace luft::scenes {

struct SongPlan {
    singer::VoiceType voice = singer::VoiceType::tenor;
    std::uint64_t seed = 1;
    int phrases = 5;
    bool breaths = true;        ///< before every phrase; otherwise rests of the same length
    bool consonants = true;     ///< some notes begin with one
    bool kinds = true;          ///< onsets and offsets of all kinds; otherwise balanced and clean
    bool vibrato = true;        ///< on long notes
    bool two_registers = false; ///< head register in the upper third of the range
    Hertz tuning{440};
};

inline double lowest_of(singer::VoiceType v) {
    switch (v) {
    case singer::VoiceType::bass:
        return 41;
    case singer::VoiceType::tenor:
        return 49;
    case singer::VoiceType::countertenor:
    case singer::VoiceType::alto:
        return 55;
    case singer::VoiceType::soprano:
        return 61;
    }
    return 49;
}

/// Phrases of four to seven notes in an octave and a half, mostly by steps of a minor scale, each after a
/// breath, the last note long.
inline singer::Song random_song(const SongPlan& plan) {
    using namespace singer;
    static constexpr std::array<int, 12> kScale{0, 2, 3, 5, 7, 8, 10, 12, 14, 15, 17, 19};
    Random random(plan.seed * 1'000'003 + static_cast<std::uint64_t>(plan.voice));
    const auto one_of = [&](int n) { return static_cast<int>(random.uniform() * n); };
    const double base = lowest_of(plan.voice);
    Song song;
    int degree = 2 + one_of(5);
    for (int p = 0; p < plan.phrases; ++p) {
        Phrase phrase;
        const Seconds breath(0.28 + 0.3 * random.uniform());
        if (plan.breaths)
            phrase.events.emplace_back(
                Breath{.length = breath, .level = Decibels(-24 - 8 * random.uniform())});
        else
            phrase.events.emplace_back(Rest{breath});
        const int count = 4 + one_of(4);
        for (int k = 0; k < count; ++k) {
            const bool first = k == 0, last = k + 1 == count;
            int step = 1 + (random.uniform() < 0.25 ? one_of(3) : 0);
            if (random.uniform() < 0.5) step = -step;
            degree = degree + step < 0 || degree + step > 11 ? degree - step : degree + step;
            SungNote n;
            n.pitch = MidiPitch(base + kScale[static_cast<std::size_t>(degree)]);
            n.length = Seconds(last ? 1.0 + 0.7 * random.uniform() : 0.28 + 0.4 * random.uniform());
            n.vowel = static_cast<Vowel>(one_of(5));
            n.off = Cents(12 * random.bell());
            n.level = Decibels(3 * random.bell());
            n.start = first ? Start::balanced : Start::legato;
            const double chance = random.uniform();
            if (plan.kinds && first)
                n.start = chance < 0.34 ? Start::glottal : chance < 0.67 ? Start::breathy : Start::balanced;
            else if (plan.consonants && chance < 0.4)
                n.consonant = static_cast<Consonant>(1 + one_of(9));
            if (plan.kinds && last) n.end = static_cast<marks::OffsetKind>(one_of(3));
            if (plan.vibrato && last)
                n.vibrato = VibratoPlan{.rate = Hertz(4.8 + 1.6 * random.uniform()),
                                        .extent = Cents(35 + 45 * random.uniform())};
            if (plan.two_registers && degree >= 8) n.sung_in = marks::Register::head;
            phrase.events.emplace_back(n);
        }
        phrase.events.emplace_back(Rest{Seconds(0.15 + 0.3 * random.uniform())});
        song.phrases.push_back(std::move(phrase));
    }
    return song;
}

inline singer::Rendition sing(const SongPlan& plan, SampleRate rate = {44100}) {
    return singer::render(random_song(plan),
                          {.voice = plan.voice, .tuning = plan.tuning, .seed = plan.seed + 7}, rate);
}

} // namespace luft::scenes
