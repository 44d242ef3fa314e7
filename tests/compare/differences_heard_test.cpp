// Differences between what the real ear hears. Seeds from 1001 on: no rule was tuned on them, but the bounds
// here were set to what they gave.
#include "compare/differences.h"
#include "compare/twice.h"

#include <catch2/catch.hpp>

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
