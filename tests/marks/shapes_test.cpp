// What a note carries besides its pitch: level and its shape, scoop, drift, cents.
#include "marks/heard.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::marks;
using singer::SungNote;

namespace {

/// One long note as planned; the ear's note for it.
Note heard_note(SungNote plan, std::uint64_t seed = 3) {
    if (plan.length < Seconds(1)) plan.length = Seconds(2);
    plan.pitch = MidiPitch(57);
    const auto heard = test::hear({plan, singer::Rest{Seconds(0.4)}}, {.wander = Cents(0), .seed = seed});
    REQUIRE(heard.said.notes.size() == 1);
    return heard.said.notes[0];
}

Note shaped(LevelShape shape, double change) {
    return heard_note({.path = {.shape = shape, .change = Decibels(change)}});
}

} // namespace

TEST_CASE("the level of a note is the level it was sung at, within 1.5 dB") {
    for (const double level : {-12.0, -6.0, 0.0, 6.0}) {
        CAPTURE(level);
        const auto heard =
            test::hear({SungNote{.length = Seconds(1.2), .pitch = MidiPitch(57), .level = Decibels(level)}});
        REQUIRE(heard.said.notes.size() == 1);
        CHECK(heard.said.notes[0].level.value() ==
              Approx(heard.sung.truth.notes[0].level.value()).margin(1.5));
    }
}

TEST_CASE("growing, fading, swelling, fluctuating and steady notes are told apart") {
    for (const double change : {8.0, 14.0}) {
        CAPTURE(change);
        const Note growing = shaped(LevelShape::growing, change), fading = shaped(LevelShape::fading, change);
        CHECK(growing.shape == LevelShape::growing);
        CHECK(growing.level_change.value() == Approx(change).margin(0.35 * change));
        CHECK(fading.shape == LevelShape::fading);
        CHECK(fading.level_change.value() == Approx(-change).margin(0.35 * change));
        CHECK(shaped(LevelShape::swelling, change).shape == LevelShape::swelling);
    }
    CHECK(shaped(LevelShape::fluctuating, 14).shape == LevelShape::fluctuating);
    const Note steady = shaped(LevelShape::steady, 0);
    CHECK(steady.shape == LevelShape::steady);
    CHECK(std::abs(steady.level_change.value()) < 2);
}

TEST_CASE("a scooped note says so, with how far below it began; a straight one doesn't") {
    for (const double scoop : {100.0, 200.0}) {
        CAPTURE(scoop);
        const Note n = heard_note({.scoop = Cents(scoop)});
        REQUIRE(n.scoop);
        CHECK(n.scoop->value() > 0.4 * scoop);
        CHECK(n.scoop->value() < 1.2 * scoop);
        CHECK(n.pitch.value() == Approx(57).margin(0.05));
    }
    CHECK_FALSE(heard_note({}).scoop);
}

TEST_CASE("drift is how far the pitch has moved at the note's end, with its sign") {
    for (const double drift : {-60.0, -30.0, 0.0, 40.0}) {
        CAPTURE(drift);
        // Fitted to the middle three fifths of the note, so about that share of the whole is seen.
        const Note n = heard_note({.drift = Cents(drift)});
        CHECK(n.drift.value() == Approx(0.6 * drift).margin(std::max(4.0, 0.25 * std::abs(drift))));
    }
}

TEST_CASE("a mistuned note is off by its cents, at the performance's own tuning") {
    std::vector<singer::Event> events;
    const std::array<double, 8> off{0, 0, 0, 30, 0, 0, -25, 0};
    for (std::size_t i = 0; i < off.size(); ++i) {
        events.emplace_back(SungNote{.length = Seconds(0.9),
                                     .pitch = MidiPitch(55 + 2.0 * static_cast<double>(i % 4)),
                                     .off = Cents(off[i])});
        events.emplace_back(singer::Rest{Seconds(0.3)});
    }
    const auto heard = test::hear(events, {.wander = Cents(0), .tuning = Hertz(444)});
    REQUIRE(heard.said.notes.size() == off.size());
    for (std::size_t i = 0; i < off.size(); ++i) {
        CAPTURE(i);
        CHECK(heard.said.notes[i].cents.value() == Approx(off[i]).margin(5));
    }
}

TEST_CASE("a sung vowel has its formants on the note, and none where the pitch is too high for them") {
    const auto low =
        test::hear({SungNote{.length = Seconds(1), .pitch = MidiPitch(50), .vowel = singer::Vowel::i}});
    REQUIRE(low.said.notes.size() == 1);
    REQUIRE(low.said.notes[0].vowel);
    CHECK(low.said.notes[0].vowel->f1.value() == Approx(290).margin(75)); // tenor i, Csound manual's table
    CHECK(low.said.notes[0].vowel->f2.value() == Approx(1870).margin(110));
    const auto high =
        test::hear({SungNote{.length = Seconds(1), .pitch = MidiPitch(76), .vowel = singer::Vowel::i}},
                   {.voice = singer::VoiceType::soprano});
    REQUIRE(high.said.notes.size() == 1);
    CHECK_FALSE(high.said.notes[0].vowel);
}
