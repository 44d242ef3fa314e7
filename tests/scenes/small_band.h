// One band for the test suite's songs.
#pragma once

#include "singer/band.h"
#include "singer/render.h"

#include <array>
#include <initializer_list>
#include <vector>

namespace luft::scenes {

/// A round of four chords in C sharp minor, as long as the song; four beats of 0.7 s a chord.
inline singer::Stereo small_band(const singer::Rendition& sung, const singer::BandStyle& style,
                                 std::uint64_t seed) {
    const auto chord = [](double bass, std::initializer_list<double> tones) {
        singer::Chord c;
        c.bass = MidiPitch(bass);
        for (const double t : tones)
            c.tones.emplace_back(t);
        return c;
    };
    const std::array<singer::Chord, 4> round{chord(37, {52, 56, 61}), chord(45, {52, 57, 61}),
                                             chord(42, {54, 57, 61}), chord(44, {51, 56, 59})};
    std::vector<singer::Chord> chords;
    while (static_cast<double>(chords.size()) * 2.8 < sung.truth.duration.value())
        chords.push_back(round[chords.size() % 4]);
    return singer::play(singer::accompany(chords, style), sung.truth.duration, sung.rate, seed);
}

} // namespace luft::scenes
