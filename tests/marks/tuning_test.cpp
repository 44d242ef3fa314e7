#include "marks/heard.h"
#include "marks/tuning.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::marks;

TEST_CASE("a tuning is the one under which the notes lie on semitones") {
    const auto tuned = [](double a4, std::initializer_list<double> semitones) {
        std::vector<HeldPitch> notes;
        for (const double s : semitones)
            notes.push_back({pitch_of(frequency_of(MidiPitch(s), Hertz(a4))), Seconds(0.5)});
        return find_tuning(notes).value();
    };
    for (const double a4 : {430.0, 432.0, 438.0, 440.0, 442.0, 445.0, 452.0}) {
        CAPTURE(a4);
        CHECK(tuned(a4, {57, 59, 60, 62, 64, 69}) == Approx(a4).margin(0.05));
    }
    // 415 Hz is a semitone lower, less a cent: it is told as what it is beside the nearest semitone.
    CHECK(interval(Hertz(440), Hertz(tuned(415, {57, 60, 64}))).value() == Approx(-1.27).margin(0.1));
}

TEST_CASE("where notes agree on no tuning, or there are none, it is 440 Hz") {
    CHECK(find_tuning({}) == Hertz(440));
    std::vector<HeldPitch> spread;
    for (int i = 0; i < 20; ++i)
        spread.push_back({MidiPitch(60 + i + 0.05 * i), Seconds(0.5)});
    CHECK(find_tuning(spread) == Hertz(440));
}

TEST_CASE("long notes count more than short ones") {
    const std::vector<HeldPitch> notes{
        {MidiPitch(60.1), Seconds(3)}, {MidiPitch(64.1), Seconds(3)}, {MidiPitch(62.8), Seconds(0.1)}};
    CHECK(interval(Hertz(440), find_tuning(notes)).value() == Approx(10).margin(1));
}

TEST_CASE("songs sung to 432, 440 and 442 Hz are heard to be, within 3 cents") {
    // 442/440 = +7.85 cents, 432/440 = -31.77 cents.
    for (const double a4 : {432.0, 440.0, 442.0}) {
        double worst = 0;
        for (const std::uint64_t seed : {71u}) {
            CAPTURE(a4, seed);
            // All notes on their semitones and without unrest, so that the tuning is known exactly.
            auto song = scenes::random_song({.seed = seed, .phrases = 6, .kinds = false});
            for (auto& p : song.phrases)
                for (auto& e : p.events)
                    if (auto* n = std::get_if<singer::SungNote>(&e)) n->off = Cents(0);
            const auto heard = test::hear(song, {.wander = Cents(0), .tuning = Hertz(a4), .seed = seed});
            const double off = interval(Hertz(a4), heard.said.tuning).value();
            CHECK(off == Approx(0).margin(3));
            worst = std::max(worst, std::abs(off));
            for (const Note& n : heard.said.notes)
                CHECK(std::abs(n.cents.value()) <= 50);
        }
    }
}
