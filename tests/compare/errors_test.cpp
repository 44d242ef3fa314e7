// The ear's own errors: the same singing, heard through two different noises. Not run unless asked for.
#include "compare/twice.h"
#include "signal/statistics.h"

#include <catch2/catch.hpp>

#include <cstdio>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

void line(const char* name, const char* unit, std::vector<double> errors, int digits = 2) {
    for (double& e : errors)
        e = std::abs(e);
    const auto at = [&](double q) {
        return signal::quantile(std::span<const double>(errors), q).value_or(-1);
    };
    std::printf("  %-22s %4zu  median %8.*f  68 %% %8.*f  95 %% %8.*f  99 %% %8.*f %s\n", name, errors.size(),
                digits, at(0.5), digits, at(0.68), digits, at(0.95), digits, at(0.99), unit);
}

std::optional<double> middle_level(const std::vector<marks::Note>& notes) {
    std::vector<double> levels;
    for (const marks::Note& n : notes)
        levels.push_back(n.level.value());
    return signal::median(std::span<const double>(levels));
}

void measure(const char* name, const Surroundings& first, const Surroundings& other) {
    std::vector<double> pitch, start, level, change, rate, extent, tuning;
    int pairs = 0, vibrato_both = 0, vibrato_one = 0, register_both = 0, register_apart = 0, lone = 0;
    std::array<int, 3> onset_both{}, onset_apart{}, offset_both{}, offset_apart{};
    for (std::uint64_t seed = 951; seed <= 962; ++seed) {
        const auto voice = seed % 2 == 0 ? singer::VoiceType::tenor : singer::VoiceType::alto;
        const auto song =
            scenes::random_song({.voice = voice, .seed = seed, .phrases = 6, .two_registers = seed % 3 == 0});
        const auto sung = singer::render(song, {.voice = voice, .seed = seed}, {44100});
        Surroundings one = first, two = other;
        one.seed = seed * 2, two.seed = seed * 2 + 1;
        const Side a = heard_in(sung, one), b = heard_in(sung, two);
        const Alignment alignment = align(a, b);
        const Counterparts found = find_counterparts(a, b, alignment);
        tuning.push_back(alignment.tuning.value());
        const auto la = middle_level(a.notes), lb = middle_level(b.notes);
        for (const auto* added : {&found.added_by_a, &found.added_by_b})
            for (const std::size_t i : *added)
                lone += (added == &found.added_by_a ? a : b).notes[i].confidence.value >= 0.7;
        for (const NotePair& p : found.notes) {
            const marks::Note &x = a.notes[p.a], &y = b.notes[p.b];
            if (x.confidence.value < 0.7 || y.confidence.value < 0.7) continue;
            ++pairs;
            pitch.push_back(p.apart.value());
            start.push_back((x.span.start - y.span.start).value());
            level.push_back(x.level.value() - y.level.value() - la.value_or(0) + lb.value_or(0));
            if (x.span.length() > Seconds(0.6))
                change.push_back(x.level_change.value() - y.level_change.value());
            if (x.vibrato && y.vibrato) {
                ++vibrato_both;
                rate.push_back((x.vibrato->rate - y.vibrato->rate).value());
                extent.push_back((x.vibrato->extent - y.vibrato->extent).value());
            } else if (x.vibrato || y.vibrato) {
                ++vibrato_one;
            }
            for (std::size_t k = 0; k < 3; ++k) {
                const Confidence least{0.7 + 0.1 * static_cast<double>(k)};
                if (std::min(x.onset.confidence, y.onset.confidence) >= least)
                    ++onset_both[k], onset_apart[k] += x.onset.kind != y.onset.kind;
                if (std::min(x.offset.confidence, y.offset.confidence) >= least)
                    ++offset_both[k], offset_apart[k] += x.offset.kind != y.offset.kind;
            }
            if (x.sung_in && y.sung_in) ++register_both, register_apart += x.sung_in != y.sung_in;
        }
    }
    std::printf("%s\n", name);
    line("tuning", "cents", tuning);
    line("pitch of a note", "cents", pitch);
    line("start of a note", "s", start, 3);
    line("level", "dB", level);
    line("change in a note", "dB", change);
    line("vibrato rate", "Hz", rate, 3);
    line("vibrato extent", "cents", extent);
    std::printf("  %d pairs; lone notes %d; vibrato heard once %d of %d; registers apart %d of %d\n", pairs,
                lone, vibrato_one, vibrato_one + vibrato_both, register_apart, register_both);
    for (std::size_t k = 0; k < 3; ++k)
        std::printf("  both given 0.%zu: onsets apart %d of %d, offsets %d of %d\n", k + 7, onset_apart[k],
                    onset_both[k], offset_apart[k], offset_both[k]);
    CHECK(pairs > 100);
}

} // namespace

TEST_CASE("how much two hearings of the same singing differ", "[.][errors]") {
    measure("alone, hiss of -66 and -54 dB", {.hiss = Decibels(-66)}, {.hiss = Decibels(-54)});
    measure("alone, rooms of 0.4 and 1.0 s", {.room = Seconds(0.4)}, {.room = Seconds(1.0)});
    measure("alone against a band at +8 dB", {.hiss = Decibels(-66)}, {.voice_over_band = Decibels(8)});
    measure("two bands at +8 dB", {.voice_over_band = Decibels(8)}, {.voice_over_band = Decibels(8)});
}
