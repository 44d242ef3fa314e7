// Songs of the test voice, heard by the ear, aligned, and played in step. Seeds from 931 on.
#include "together/material.h"
#include "tools/memory_sound.h"

#include <catch2/catch.hpp>

#include <cstdio>
#include <ctime>

using namespace luft;
using namespace luft::together;
using namespace luft::together::test;
using compare::test::Recorded;
using compare::test::Rendering;
using luft::test::MemorySound;
using enum singer::VoiceType;

namespace {

singer::Song song_of(std::uint64_t seed, int phrases = 6) {
    return scenes::random_song({.voice = tenor, .seed = seed, .phrases = phrases});
}

struct Pair {
    Recorded a, b;
    compare::Alignment alignment;
    int semitones = 0; ///< that B was sung higher
    Cents tuning;
};

Pair pair_of(const singer::Song& song, const Rendering& first, const Rendering& other) {
    Pair out{compare::test::sing_another_way(song, first),
             compare::test::sing_another_way(song, other),
             {},
             other.semitones,
             interval(first.tuning, other.tuning)};
    out.alignment = compare::align(compare::test::hear(out.a).side, compare::test::hear(out.b).side);
    return out;
}

InStep in_step(const Pair& p, bool transposed) {
    constexpr SampleRate kRate{44100};
    return {{std::make_unique<MemorySound>(p.a.samples, kRate, p.a.channels), {}},
            {std::make_unique<MemorySound>(p.b.samples, kRate, p.b.channels), {}},
            p.alignment,
            transposed};
}

Offsets offsets(const Pair& p, double speed, bool transposed = false) {
    const double higher = p.semitones + p.tuning.value() / 100;
    return sung_offsets(played(in_step(p, transposed), speed), p.a.truth, transposed ? 0 : higher, speed);
}

} // namespace

TEST_CASE("notes of two performances sound together, in another tempo, key and voice") {
    const singer::Song song = song_of(931);
    const Rendering other = GENERATE(Rendering{.seed = 2, .speed = 0.7, .rubato = 0.1},
                                     Rendering{.seed = 3, .speed = 1.4, .rubato = 0.1},
                                     Rendering{.voice = alto, .seed = 4, .rubato = 0.2, .semitones = 7});
    const Pair p = pair_of(song, {}, other);
    const Offsets found = offsets(p, 1);
    CAPTURE(other.speed, other.semitones, found.missed);
    CHECK(found.notes >= 8);
    CHECK(found.missed <= found.notes / 5);
    CHECK(found.median_ms < 20);
    CHECK(found.p95_ms < 60);
}

TEST_CASE("at half speed, at a quarter, and transposed they still do") {
    const Pair p = pair_of(song_of(932), {}, {.voice = alto, .seed = 4, .rubato = 0.2, .semitones = 5});
    for (const double speed : {0.5, 0.25}) {
        CAPTURE(speed);
        const Offsets found = offsets(p, speed);
        CHECK(found.notes >= 8);
        CHECK(found.median_ms * speed < 20);
        CHECK(found.p95_ms * speed < 60);
    }
    const Offsets transposed = offsets(p, 1, true);
    CHECK(transposed.notes >= 8);
    CHECK(transposed.median_ms < 20);
    CHECK(transposed.p95_ms < 60);
}

TEST_CASE("figures: how well songs keep step", "[.][figures][step]") {
    const auto show = [](const char* name, const Rendering& other, std::uint64_t seed) {
        const Pair p = pair_of(song_of(seed, 8), {.seed = seed}, other);
        for (const double speed : {1.0, 0.5, 0.25}) {
            const Offsets o = offsets(p, speed);
            std::printf(
                "%-22s speed %.2f  notes %2zu missed %zu  lean %+5.1f  median %5.1f  95 %% within %5.1f ms\n",
                name, speed, o.notes, o.missed, o.lean_ms, o.median_ms, o.p95_ms);
        }
        const Offsets o = offsets(p, 1, true);
        std::printf(
            "%-22s transposed  notes %2zu missed %zu  lean %+5.1f  median %5.1f  95 %% within %5.1f ms\n",
            name, o.notes, o.missed, o.lean_ms, o.median_ms, o.p95_ms);
    };
    for (const std::uint64_t seed : {941, 942}) {
        show("another take", {.seed = seed + 50, .rubato = 0.05}, seed);
        show("speed 0.7, rubato 0.1", {.seed = seed + 50, .speed = 0.7, .rubato = 0.1}, seed);
        show("speed 1.4, rubato 0.1", {.seed = seed + 50, .speed = 1.4, .rubato = 0.1}, seed);
        show("alto +7, rubato 0.2",
             {.voice = alto, .seed = seed + 50, .rubato = 0.2, .semitones = 7, .tuning = Hertz(444)}, seed);
        show("bass -7, rubato 0.1", {.voice = bass, .seed = seed + 50, .rubato = 0.1, .semitones = -7}, seed);
    }
}

TEST_CASE("figures: how fast it works, and how soon it begins", "[.][figures][speed]") {
    const Pair p = pair_of(song_of(944, 8), {}, {.voice = alto, .seed = 4, .rubato = 0.2, .semitones = 7});
    const auto seconds = [](auto&& work) {
        const std::clock_t began = std::clock(); // of one core, whatever else the machine does
        work();
        return static_cast<double>(std::clock() - began) / CLOCKS_PER_SEC;
    };
    const double length = static_cast<double>(p.a.samples.size()) / 44100;
    for (const bool transposed : {false, true})
        for (const double speed : {1.0, 0.5, 0.25}) {
            const double took = seconds([&] { (void)played(in_step(p, transposed), speed); });
            std::printf("speed %.2f%s: %.1f s of sound in %.2f s, %.1f times real time\n", speed,
                        transposed ? ", transposed" : "", length / speed, took, length / speed / took);
        }
    InStep sound = in_step(p, false);
    double worst = 0;
    for (int i = 0; i < 20; ++i)
        worst = std::max(worst, seconds([&] {
                             sound.go_to(std::llround((i * 7 % 20) * length / 20 * 44100));
                             (void)sound.read();
                         }));
    std::printf("begins within %.0f ms, the worst of 20 places\n", 1000 * worst);
}
