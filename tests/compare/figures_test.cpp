// What the alignment reaches, measured: not run unless asked for.
#include "compare/heard.h"
#include "compare/material.h"
#include "signal/statistics.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <cstdio>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

void line(const char* name, std::uint64_t first, std::uint64_t last, Manner first_one, Manner other,
          int sections = 4) {
    std::vector<double> medians, ends, seconds;
    int lost = 0, shared = 0, wrong_keys = 0;
    double right = 0, wrong = 0, worst = 0;
    for (std::uint64_t seed = first; seed <= last; ++seed) {
        const Score score = random_score(seed, sections);
        first_one.seed = seed * 2, other.seed = seed * 2 + 1;
        const Performed a = perform(score, first_one), b = perform(score, other);
        const auto began = std::chrono::steady_clock::now();
        const Alignment found = align(a.side, b.side);
        seconds.push_back(std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count());
        const Errors e = errors_of(a, b, found);
        if (found.semitones != other.semitones - first_one.semitones) ++wrong_keys;
        lost += e.lost, shared += e.shared;
        right += e.right_pairs, wrong += e.wrong_pairs;
        medians.push_back(e.median_ms), ends.push_back(e.p95_ms);
        worst = std::max(worst, e.median_ms);
    }
    const auto n = static_cast<double>(last - first + 1);
    std::printf(
        "%-30s median %5.1f (worst %7.1f)  95%% %7.1f ms  lost %d/%d  keys wrong %d  pairs right %.3f wrong "
        "%.3f  %.2f s\n",
        name, signal::median(std::span<const double>(medians)).value(), worst,
        signal::median(std::span<const double>(ends)).value(), lost, shared, wrong_keys, right / n, wrong / n,
        signal::median(std::span<const double>(seconds)).value());
}

} // namespace

TEST_CASE("figures: alignment of curves by chance", "[.][figures][chance]") {
    const std::uint64_t from = 501, to = 510;
    for (const double speed : {0.5, 0.7, 0.85, 1.0, 1.2, 1.4, 2.0})
        line(("speed " + std::to_string(speed).substr(0, 4)).c_str(), from, to, {}, {.speed = speed});
    for (const double rubato : {0.1, 0.2, 0.3})
        line(("rubato " + std::to_string(rubato).substr(0, 4)).c_str(), from, to, {.rubato = rubato},
             {.rubato = rubato});
    for (const int key : {-7, -5, -1, 3, 6, 12})
        line(("key " + std::to_string(key)).c_str(), from, to, {},
             {.rubato = 0.1, .semitones = key, .tuning = Cents(35)});
    line("cut verse", from, to, {}, {.rubato = 0.1, .sections = {0, 1, 3}});
    line("cut first verse", from, to, {}, {.rubato = 0.1, .sections = {1, 2, 3}});
    line("repeated verse", from, to, {}, {.rubato = 0.1, .sections = {0, 1, 1, 2, 3}});
    line("talk 60 s", from, to, {}, {.rubato = 0.1, .semitones = 2, .talk = Seconds(60)});
    line("talk 60 s, the other way", from, to, {.talk = Seconds(60)}, {.rubato = 0.1, .semitones = 2});
    line("interlude 20 s", from, to, {}, {.rubato = 0.1, .interlude = Seconds(20)});
    line("15 % missed", from, to, {.missed = 0.15}, {.rubato = 0.1, .missed = 0.15});
    line("10 % octave slips", from, to, {}, {.rubato = 0.1, .octave_slips = 0.1});
    line("ornaments", from, to, {}, {.rubato = 0.1, .ornaments = 0.6});
    line("all of it", from, to, {.rubato = 0.1, .missed = 0.1},
         {.speed = 0.8,
          .rubato = 0.15,
          .semitones = -5,
          .tuning = Cents(-20),
          .sections = {0, 1, 3},
          .talk = Seconds(40),
          .missed = 0.1,
          .octave_slips = 0.05,
          .ornaments = 0.3});
}

TEST_CASE("figures: how long aligning takes", "[.][figures][long]") {
    const Manner other{.speed = 0.9, .rubato = 0.1, .semitones = 3};
    line("ten minutes", 511, 513, {}, other, 32);
    line("ten minutes, one section less", 511, 513, {},
         {.speed = 0.9, .sections = {0,  1,  2,  3,  4,  5,  6,  7,  8,  9,  10, 11, 12, 13, 14, 15,
                                     16, 17, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31}},
         32);
    line("an hour", 514, 514, {}, other, 195);
}

TEST_CASE("figures: songs that the ear has heard", "[.][figures][heard]") {
    const auto show = [](const char* name, const singer::Song& song, const Rendering& first,
                         const Rendering& other) {
        const Performed a = sing_and_hear(song, first), b = sing_and_hear(song, other);
        const Alignment found = align(a.side, b.side);
        const Errors e = errors_of(a, b, found);
        std::printf(
            "%-28s median %5.1f 95%% %6.1f ms  lost %d/%d  key %d (%d)  pairs right %.3f wrong %.3f\n", name,
            e.median_ms, e.p95_ms, e.lost, e.shared, found.semitones, other.semitones - first.semitones,
            e.right_pairs, e.wrong_pairs);
    };
    using enum singer::VoiceType;
    for (const std::uint64_t seed : {921, 922, 923}) {
        const singer::Song song = scenes::random_song({.voice = tenor, .seed = seed, .phrases = 8});
        const Rendering first{.seed = seed};
        show("other seed", song, first, {.seed = seed + 50});
        show("speed 0.7", song, first, {.seed = seed + 50, .speed = 0.7});
        show("speed 1.4", song, first, {.seed = seed + 50, .speed = 1.4});
        show("rubato 0.2, alto +7", song, first,
             {.voice = alto, .seed = seed + 50, .rubato = 0.2, .semitones = 7, .tuning = Hertz(444)});
        show("soprano +12", song, first,
             {.voice = soprano, .seed = seed + 50, .rubato = 0.1, .semitones = 12});
        show("bass -7", song, first, {.voice = bass, .seed = seed + 50, .rubato = 0.1, .semitones = -7});
        show(
            "cut 2 phrases", song, first,
            {.voice = alto, .seed = seed + 50, .rubato = 0.1, .semitones = 5, .phrases = {0, 1, 4, 5, 6, 7}});
        show("repeated 3 phrases", song, first,
             {.voice = alto,
              .seed = seed + 50,
              .rubato = 0.1,
              .semitones = 5,
              .phrases = {0, 1, 2, 3, 1, 2, 3, 4, 5, 6, 7}});
        show("band against none", song, first,
             {.voice = alto, .seed = seed + 50, .rubato = 0.1, .semitones = 5, .band = true});
        show("band against band", song, {.seed = seed, .band = true},
             {.seed = seed + 50, .rubato = 0.1, .semitones = 2, .band = true});
    }
}
