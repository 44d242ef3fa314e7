// The ear's own errors in what a note sounds like: the same singing heard twice. Not run unless asked for.
#include "compare/colour.h"
#include "compare/manners.h"
#include "compare/twice.h"
#include "signal/statistics.h"

#include <catch2/catch.hpp>

#include <cstdio>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

using Values = std::vector<double>;

void line(const char* name, const char* unit, Values errors) {
    for (double& e : errors)
        e = std::abs(e);
    const auto at = [&](double q) {
        return signal::quantile(std::span<const double>(errors), q).value_or(-1);
    };
    std::printf("  %-22s %4zu  median %7.2f  95 %% %7.2f  99 %% %7.2f %s\n", name, errors.size(), at(0.5),
                at(0.95), at(0.99), unit);
}

/// Each value off the median of all; the median itself is kept in `whole`.
Values off_middle(Values all, Values& whole) {
    const double middle = signal::median(std::span<const double>(all)).value_or(0);
    if (!all.empty()) whole.push_back(middle);
    for (double& x : all)
        x -= middle;
    return all;
}

struct Two {
    Values scoop, drift, f1, f2, cpp, h1h2, ring, whole_f1, whole_f2, whole_cpp, whole_h1h2, whole_ring,
        level_range;
    int scooped_once = 0, scooped_both = 0, scoops_apart = 0, broken_once = 0, broken_both = 0, plain = 0,
        cracks_apart = 0;
};

double level_range(const std::vector<double>& levels) {
    return signal::quantile(std::span<const double>(levels), 0.9).value_or(0) -
           signal::quantile(std::span<const double>(levels), 0.1).value_or(0);
}

void compare_two(const Side& a, const Side& b, Two& two) {
    const Counterparts found = find_counterparts(a, b, align(a, b));
    Values f1, f2, cpp, h1h2, ring, levels_a, levels_b;
    for (const NotePair& p : found.notes) {
        const marks::Note &x = a.notes[p.a], &y = b.notes[p.b];
        if (std::min(x.confidence.value, y.confidence.value) < 0.7) continue;
        const auto cents = [](const marks::Note& n) { return n.scoop ? n.scoop->value() : 0; };
        if (x.scoop && y.scoop) two.scoop.push_back(cents(y) - cents(x));
        two.scoops_apart +=
            x.scoop.has_value() != y.scoop.has_value() && begins_on_pitch(x.scoop ? b : a, x.scoop ? y : x);
        two.scooped_once += x.scoop.has_value() != y.scoop.has_value();
        two.scooped_both += x.scoop && y.scoop;
        if (std::min(x.span.length(), y.span.length()) >= Seconds(0.7))
            two.drift.push_back((y.drift - x.drift).value());
        if (x.vowel && y.vowel) {
            f1.push_back(12 * std::log2(y.vowel->f1 / x.vowel->f1));
            f2.push_back(12 * std::log2(y.vowel->f2 / x.vowel->f2));
        }
        const Colour of_x = colour_of(a, x.span), of_y = colour_of(b, y.span);
        const auto add = [](Values& to, const auto& u, const auto& v) {
            if (u && v) to.push_back((*v - *u).value());
        };
        add(cpp, of_x.cpp, of_y.cpp), add(h1h2, of_x.h1h2, of_y.h1h2), add(ring, of_x.ring, of_y.ring);
        const Dip dip_x = deepest_dip(a, x.span).value_or(Dip{}),
                  dip_y = deepest_dip(b, y.span).value_or(Dip{});
        two.broken_once += dip_x.broken != dip_y.broken;
        two.broken_both += dip_x.broken && dip_y.broken;
        two.plain += !dip_x.broken && !dip_y.broken;
        // As differ_manner.cpp tells it.
        const auto only = [](const Dip& one, const Dip& other) {
            return one.broken && !other.broken && one.depth >= Decibels(6) && other.depth <= Decibels(3);
        };
        two.cracks_apart += only(dip_x, dip_y) || only(dip_y, dip_x);
        levels_a.push_back(x.level.value()), levels_b.push_back(y.level.value());
    }
    two.level_range.push_back(level_range(levels_b) - level_range(levels_a));
    const auto put = [](Values& to, const Values& of, Values& whole) {
        const Values off = off_middle(of, whole);
        to.insert(to.end(), off.begin(), off.end());
    };
    put(two.f1, f1, two.whole_f1), put(two.f2, f2, two.whole_f2), put(two.cpp, cpp, two.whole_cpp);
    put(two.h1h2, h1h2, two.whole_h1h2), put(two.ring, ring, two.whole_ring);
}

void print(const char* name, const Two& two) {
    std::printf("%s\n", name);
    line("scoop of both", "cents", two.scoop);
    line("drift", "cents", two.drift);
    line("F1, middle taken out", "semitones", two.f1);
    line("F2, middle taken out", "semitones", two.f2);
    line("F1, whole", "semitones", two.whole_f1);
    line("F2, whole", "semitones", two.whole_f2);
    line("CPP, middle taken out", "dB", two.cpp);
    line("H1-H2, middle out", "dB", two.h1h2);
    line("ring, middle out", "dB", two.ring);
    line("CPP, whole", "dB", two.whole_cpp);
    line("H1-H2, whole", "dB", two.whole_h1h2);
    line("ring, whole", "dB", two.whole_ring);
    line("range of level", "dB", two.level_range);
    std::printf("  scooped: both %d, one %d, one and on pitch %d; broken: both %d, one %d, none %d; a crack "
                "and nothing like it %d\n",
                two.scooped_both, two.scooped_once, two.scoops_apart, two.broken_both, two.broken_once,
                two.plain, two.cracks_apart);
}

constexpr std::uint64_t kFirst = 951, kLast = 962;

void measure(const char* name, const Surroundings& first, const Surroundings& other) {
    Two two;
    for (std::uint64_t seed = kFirst; seed <= kLast; ++seed) {
        const auto voice = seed % 2 == 0 ? singer::VoiceType::tenor : singer::VoiceType::alto;
        const auto sung =
            singer::render(song_with_manners(seed, voice), {.voice = voice, .seed = seed}, {44100});
        Surroundings one = first, two_of = other;
        one.seed = seed * 2, two_of.seed = seed * 2 + 1;
        compare_two(heard_in(sung, one), heard_in(sung, two_of), two);
    }
    print(name, two);
    CHECK(two.plain > 100);
}

/// Sung again by another voice: what is left is what keys and voices do, not what the singer means.
void measure_again(const char* name, singer::VoiceType other, int semitones) {
    Two two;
    for (std::uint64_t seed = kFirst; seed <= kLast; ++seed) {
        const auto song = song_with_manners(seed, singer::VoiceType::tenor);
        auto moved = song;
        for (singer::Phrase& phrase : moved.phrases)
            for (singer::Event& e : phrase.events)
                change(e, 1, semitones);
        const auto a = singer::render(song, {.seed = seed}, {44100}),
                   b = singer::render(moved, {.voice = other, .seed = seed + 50}, {44100});
        compare_two(heard_in(a, {.seed = seed, .hiss = Decibels(-66)}),
                    heard_in(b, {.seed = seed + 1, .hiss = Decibels(-66)}), two);
    }
    print(name, two);
    CHECK(two.plain > 100);
}

} // namespace

TEST_CASE("how much two hearings of the same notes differ in colour", "[.][errors]") {
    measure("alone, hiss of -66 and -54 dB", {.hiss = Decibels(-66)}, {.hiss = Decibels(-54)});
    measure("alone, rooms of 0.4 and 1.0 s", {.room = Seconds(0.4)}, {.room = Seconds(1.0)});
    measure("alone against a band at +8 dB", {.hiss = Decibels(-66)}, {.voice_over_band = Decibels(8)});
    measure("two bands at +8 dB", {.voice_over_band = Decibels(8)}, {.voice_over_band = Decibels(8)});
}

TEST_CASE("how much the same notes sung again differ in colour", "[.][errors]") {
    measure_again("sung again by another tenor", singer::VoiceType::tenor, 0);
    measure_again("sung again, 3 semitones higher", singer::VoiceType::tenor, 3);
    measure_again("sung again by an alto, 7 semitones higher", singer::VoiceType::alto, 7);
}
