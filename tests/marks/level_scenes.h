// Phrases whose level goes along a known path, for tests.
#pragma once

#include "marks/heard.h"
#include "scenes/small_band.h"
#include "singer/room.h"

#include <cmath>
#include <numbers>

namespace luft::marks::test {

/// Level at a share of the phrase, dB.
using Path = double (*)(double share, double size);

inline double grows(double u, double size) {
    return size * (u - 0.5);
}
inline double fades(double u, double size) {
    return -size * (u - 0.5);
}
inline double stays(double, double) {
    return 0;
}
/// Highest in the middle.
inline double swells(double u, double size) {
    return size * (std::pow(std::sin(std::numbers::pi * u), 2) - 0.5);
}
/// Highest at seven tenths.
inline double swells_late(double u, double size) {
    return size * (std::pow(std::sin(std::numbers::pi * std::pow(u, 1.943)), 2) - 0.5);
}

struct ShapedSong {
    singer::VoiceType voice = singer::VoiceType::tenor;
    std::uint64_t seed = 1;
    int phrases = 6;
    Path path = stays;
    double size = 0;        ///< dB
    double accents = 1;     ///< standard deviation of what single notes add, dB
    double louder_open = 0; ///< dB by which a is louder than i and u; e and o between
};

/// Lines by chance (scenes/songs.h) with the levels of their notes along the path.
inline singer::Song shaped_song(const ShapedSong& plan) {
    singer::Song song =
        scenes::random_song({.voice = plan.voice, .seed = plan.seed, .phrases = plan.phrases});
    singer::Random random(plan.seed * 77 + 5);
    for (auto& phrase : song.phrases) {
        double whole = 0, before = 0;
        for (const auto& e : phrase.events)
            if (const auto* n = std::get_if<singer::SungNote>(&e)) whole += n->length.value();
        for (auto& e : phrase.events) {
            auto* n = std::get_if<singer::SungNote>(&e);
            if (!n) continue;
            const double from = before / whole, to = (before + n->length.value()) / whole;
            before += n->length.value();
            const double open = n->vowel == singer::Vowel::a                                   ? 1
                                : n->vowel == singer::Vowel::e || n->vowel == singer::Vowel::o ? 0.5
                                                                                               : 0;
            n->level = Decibels(plan.path((from + to) / 2, plan.size) + plan.accents * random.bell() +
                                plan.louder_open * (open - 0.5));
            const double inside = plan.path(to, plan.size) - plan.path(from, plan.size);
            n->path = {inside < 0 ? LevelShape::fading : LevelShape::growing, Decibels(std::abs(inside))};
            n->end = OffsetKind::clean;
        }
    }
    return song;
}

enum class Where { dry, room, band12, band6, band0 };

inline singer::Stereo band_for(const singer::Rendition& sung, std::uint64_t seed) {
    return scenes::small_band(
        sung, {.harmony = seed % 2 ? singer::Instrument::plucked : singer::Instrument::struck}, seed);
}

/// A rendition as it is heard there.
inline Analysis hear_in(Where where, const singer::Rendition& sung, std::uint64_t seed) {
    if (where == Where::dry) return listen_to(sung.samples, sung.rate);
    if (where == Where::room) return listen_to(singer::in_room(sung.samples, sung.rate, {}), sung.rate);
    const double over = where == Where::band12 ? 12 : where == Where::band6 ? 6 : 0;
    return listen_to(singer::mix(sung.samples, band_for(sung, seed), Decibels(over), sung.rate), sung.rate,
                     Accompaniment::accompanied, 2);
}

inline Heard hear(const singer::Song& song, const singer::Singer& singer, Where where) {
    Heard h{singer::render(song, singer, {44100}), {}};
    h.said = hear_in(where, h.sung, singer.seed);
    return h;
}

} // namespace luft::marks::test
