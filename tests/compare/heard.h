// Songs sung by the test voice and heard by the ear, in other tempos, keys and orders.
#pragma once

#include "compare/material.h"
#include "scenes/small_band.h"
#include "scenes/songs.h"

#include <cmath>
#include <map>
#include <utility>

namespace luft::compare::test {

/// How a song is sung another time.
struct Rendering {
    singer::VoiceType voice = singer::VoiceType::tenor;
    std::uint64_t seed = 1; ///< of the voice, not of the song
    double speed = 1;
    double rubato = 0;
    int semitones = 0;
    Hertz tuning{440};
    std::vector<int> phrases = {}; ///< which, in order; empty = all
    bool band = false;
    std::vector<float> talk = {}; ///< spoken before it, at 44.1 kHz; voice alone only
};

inline void change(singer::Event& event, double slower, int semitones) {
    if (auto* note = std::get_if<singer::SungNote>(&event)) {
        note->length = note->length * slower;
        note->pitch += MidiPitch(semitones);
    } else if (auto* breath = std::get_if<singer::Breath>(&event)) {
        breath->length = breath->length * slower;
    } else if (auto* rest = std::get_if<singer::Rest>(&event)) {
        rest->length = rest->length * slower;
    }
}

inline std::vector<PlacedNote> placed(const singer::Truth& truth, const std::vector<int>& ids,
                                      const Side& side) {
    std::vector<Span> notes;
    for (const singer::TrueNote& n : truth.notes)
        notes.push_back(n.span);
    return placed(notes, ids, side);
}

/// A song sung, before it is heard.
struct Recorded {
    std::vector<float> samples; ///< at 44.1 kHz
    int channels = 1;
    singer::Truth truth;
    std::vector<int> ids; ///< of the true notes: the same for the same note of the song
};

inline Recorded sing_another_way(const singer::Song& song, const Rendering& how) {
    singer::Random random(how.seed * 31 + 5);
    std::vector<int> order = how.phrases, first_id, ids;
    int notes = 0;
    for (std::size_t p = 0; p < song.phrases.size(); ++p) {
        if (how.phrases.empty()) order.push_back(static_cast<int>(p));
        first_id.push_back(notes);
        for (const auto& e : song.phrases[p].events)
            notes += std::holds_alternative<singer::SungNote>(e);
    }
    singer::Song sung;
    for (const int p : order) {
        sung.phrases.push_back(song.phrases[static_cast<std::size_t>(p)]);
        int id = first_id[static_cast<std::size_t>(p)];
        double tempo = how.speed * std::exp(how.rubato * random.bell());
        for (singer::Event& e : sung.phrases.back().events) {
            tempo *= std::exp(0.3 * how.rubato * random.bell());
            change(e, 1 / tempo, how.semitones);
            if (std::holds_alternative<singer::SungNote>(e)) ids.push_back(id++);
        }
    }
    auto made = singer::render(sung, {.voice = how.voice, .tuning = how.tuning, .seed = how.seed}, {44100});
    Recorded out{made.samples, how.band ? 2 : 1, {}, ids};
    if (how.band)
        out.samples =
            singer::mix(made.samples, scenes::small_band(made, {}, how.seed), Decibels(8), made.rate);
    out.samples.insert(out.samples.begin(), how.talk.begin(), how.talk.end());
    const Seconds talk(static_cast<double>(how.talk.size()) / made.rate.per_second);
    out.truth = std::move(made.truth);
    for (singer::TrueNote& n : out.truth.notes)
        n.span = {n.span.start + talk, n.span.end + talk};
    return out;
}

inline Performed hear(Recorded recorded, Seconds talk = Seconds(0)) {
    singer::MemorySource source(std::move(recorded.samples), {44100}, recorded.channels);
    Performed out;
    out.talk = {Seconds(0), talk};
    out.side = side_of(marks::listen(source));
    out.side.harmony = hear_harmony(source, out.side.tuning);
    out.notes = placed(recorded.truth, recorded.ids, out.side);
    return out;
}

inline Performed sing_and_hear(const singer::Song& song, const Rendering& how) {
    return hear(sing_another_way(song, how), Seconds(static_cast<double>(how.talk.size()) / 44100));
}

} // namespace luft::compare::test
