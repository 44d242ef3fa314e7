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

/// The true notes with, for each, the note of the ear's that begins within 0.1 s of it.
inline std::vector<PlacedNote> placed(const singer::Truth& truth, const std::vector<int>& ids,
                                      const Side& side) {
    std::vector<PlacedNote> out;
    for (std::size_t i = 0; i < truth.notes.size(); ++i) {
        PlacedNote note{ids[i], truth.notes[i].span, -1};
        double nearest = 0.1;
        for (std::size_t k = 0; k < side.notes.size(); ++k) {
            const double apart = std::abs((side.notes[k].span.start - note.span.start).value());
            if (apart < nearest) nearest = apart, note.heard = static_cast<int>(k);
        }
        out.push_back(note);
    }
    return out;
}

inline Performed sing_and_hear(const singer::Song& song, const Rendering& how) {
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
    const auto made =
        singer::render(sung, {.voice = how.voice, .tuning = how.tuning, .seed = how.seed}, {44100});
    std::vector<float> samples = made.samples;
    if (how.band)
        samples = singer::mix(made.samples, scenes::small_band(made, {}, how.seed), Decibels(8), made.rate);
    samples.insert(samples.begin(), how.talk.begin(), how.talk.end());
    const Seconds talk(static_cast<double>(how.talk.size()) / made.rate.per_second);
    singer::MemorySource source(std::move(samples), made.rate, how.band ? 2 : 1);
    singer::Truth truth = made.truth;
    for (singer::TrueNote& n : truth.notes)
        n.span = {n.span.start + talk, n.span.end + talk};
    Performed out;
    out.talk = {Seconds(0), talk};
    out.side = side_of(marks::listen(source));
    out.side.harmony = hear_harmony(source, out.side.tuning);
    out.notes = placed(truth, ids, out.side);
    return out;
}

} // namespace luft::compare::test
