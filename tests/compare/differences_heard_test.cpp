// Differences between what the real ear hears. Seeds from 1001 on: no rule was tuned on them, but the bounds
// here were set to what they gave.
#include "compare/differences.h"
#include "compare/manners.h"
#include "compare/twice.h"

#include <catch2/catch.hpp>

#include <cstdio>
#include <map>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

std::vector<Difference> differences(const Side& a, const Side& b) {
    const Alignment alignment = align(a, b);
    return find_differences(a, b, alignment, find_counterparts(a, b, alignment));
}

int claimed(const Surroundings& first, const Surroundings& other) {
    int all = 0;
    for (std::uint64_t seed = 1001; seed <= 1006; ++seed) {
        const auto song = scenes::random_song(
            {.voice = singer::VoiceType::tenor, .seed = seed, .phrases = 6, .two_registers = seed % 2 == 0});
        const auto sung = singer::render(song, {.voice = singer::VoiceType::tenor, .seed = seed}, {44100});
        Surroundings one = first, two = other;
        one.seed = seed * 2, two.seed = seed * 2 + 1;
        for (const Difference& d : differences(heard_in(sung, one), heard_in(sung, two))) {
            ++all;
            UNSCOPED_INFO(name_of(d.kind) << ": " << d.sentence << " " << d.size << " +- " << d.expected);
        }
    }
    return all;
}

} // namespace

TEST_CASE("the same singing heard twice shows a difference once in four hearings at most") {
    // Six songs each. Measured: 1 (registers) and 2 (registers, an onset).
    CHECK(claimed({.hiss = Decibels(-66)}, {.hiss = Decibels(-54)}) <= 1);
    CHECK(claimed({.room = Seconds(0.4)}, {.room = Seconds(1.0)}) <= 2);
}

TEST_CASE("the same singing heard twice under other bands shows hardly any difference") {
    // Measured: 1 (intonation) in both together; on six other songs 5, before 'straight' was held to 15
    // cents.
    CHECK(claimed({.voice_over_band = Decibels(8)}, {.voice_over_band = Decibels(8)}) <= 2);
    CHECK(claimed({.hiss = Decibels(-66)}, {.voice_over_band = Decibels(8)}) <= 2);
}

namespace {

/// How many in all.
int print(const char* name, const std::map<std::string, int>& kinds, int songs) {
    int all = 0;
    std::printf("%-44s", name);
    for (const auto& [kind, count] : kinds)
        std::printf(" %s %d,", kind.c_str(), count), all += count;
    std::printf(" in all %d in %d songs\n", all, songs);
    std::fflush(stdout);
    return all;
}

void count_claims(const char* name, bool manners, const Surroundings& first, const Surroundings& other) {
    std::map<std::string, int> kinds;
    for (std::uint64_t seed = 1113; seed <= 1118; ++seed) {
        const auto voice = seed % 3 == 0 ? singer::VoiceType::alto : singer::VoiceType::tenor;
        const auto song = manners ? song_with_manners(seed, voice)
                                  : scenes::random_song({.voice = voice, .seed = seed, .phrases = 6});
        const auto sung = singer::render(song, {.voice = voice, .seed = seed}, {44100});
        Surroundings one = first, two = other;
        one.seed = seed * 2, two.seed = seed * 2 + 1;
        for (const Difference& d : differences(heard_in(sung, one), heard_in(sung, two)))
            ++kinds[name_of(d.kind)];
    }
    CHECK(print(name, kinds, 6) <= 6); // one a song: nothing was put in
}

} // namespace

TEST_CASE("figures: what is claimed of the same singing heard twice", "[.][figures][claims]") {
    const bool manners = GENERATE(false, true); // scoops, drifts and cracks
    std::printf("%s\n", manners ? "with scoops, drifts and cracks" : "plain");
    SECTION("hiss")
    count_claims("  hiss of -66 and -54 dB", manners, {.hiss = Decibels(-66)}, {.hiss = Decibels(-54)});
    SECTION("rooms")
    count_claims("  rooms of 0.4 and 1.0 s", manners, {.room = Seconds(0.4)}, {.room = Seconds(1.0)});
    SECTION("one band")
    count_claims("  alone and a band at +8 dB", manners, {.hiss = Decibels(-66)},
                 {.voice_over_band = Decibels(8)});
    SECTION("two bands")
    count_claims("  two bands at +8 dB", manners, {.voice_over_band = Decibels(8)},
                 {.voice_over_band = Decibels(8)});
}

TEST_CASE("figures: what is claimed of the same song sung again", "[.][figures][claims]") {
    const auto again = [](const char* name, singer::VoiceType voice, int semitones) {
        std::map<std::string, int> kinds;
        for (std::uint64_t seed = 1113; seed <= 1118; ++seed) {
            const auto song = scenes::random_song({.seed = seed, .phrases = 6});
            auto moved = song;
            for (singer::Phrase& phrase : moved.phrases)
                for (singer::Event& e : phrase.events)
                    change(e, 1, semitones);
            const auto a = singer::render(song, {.seed = seed}, {44100}),
                       b = singer::render(moved, {.voice = voice, .seed = seed + 50}, {44100});
            for (const Difference& d : differences(heard_in(a, {.seed = seed, .hiss = Decibels(-66)}),
                                                   heard_in(b, {.seed = seed + 1, .hiss = Decibels(-66)})))
                ++kinds[name_of(d.kind)];
        }
        CHECK(print(name, kinds, 6) <= 9); // six times the key, which was put in
    };
    again("another tenor", singer::VoiceType::tenor, 0);
    again("another tenor, 3 semitones higher", singer::VoiceType::tenor, 3);
    again("an alto, 7 semitones higher", singer::VoiceType::alto, 7);
}
