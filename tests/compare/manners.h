// Songs with what the ear says of single notes: scoops, drifts and cracks.
#pragma once

#include "scenes/songs.h"

namespace luft::compare::test {

/// Scoops on some notes after a rest, drifts and cracks on some of the long ones.
inline singer::Song song_with_manners(std::uint64_t seed, singer::VoiceType voice) {
    singer::Song song =
        scenes::random_song({.voice = voice, .seed = seed, .phrases = 6, .two_registers = seed % 3 == 0});
    singer::Random random(seed * 13 + 5);
    for (singer::Phrase& phrase : song.phrases)
        for (singer::Event& e : phrase.events)
            if (auto* n = std::get_if<singer::SungNote>(&e)) {
                if (n->start != singer::Start::legato && random.uniform() < 0.4)
                    n->scoop = Cents(60 + 120 * random.uniform());
                if (n->length < Seconds(0.9)) continue;
                if (random.uniform() < 0.3) n->drift = Cents(40 * random.bell());
                if (random.uniform() < 0.3)
                    n->flip = singer::Flip{n->length * 0.5,
                                           n->sung_in == marks::Register::chest ? marks::Register::head
                                                                                : marks::Register::chest,
                                           true};
            }
    return song;
}

} // namespace luft::compare::test
