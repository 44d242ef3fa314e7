// Breaths: found where they were taken, not claimed where there are none.
#include "marks/heard.h"
#include "singer/room.h"

#include <catch2/catch.hpp>

#include <cstdio>

using namespace luft;
using namespace luft::marks;
using singer::SungNote;

namespace {

SungNote note(double seconds, double pitch) {
    return {.length = Seconds(seconds), .pitch = MidiPitch(pitch)};
}

} // namespace

TEST_CASE("a heard breath has its place, its evidence, and its level under the singing") {
    for (const double level : {-22.0, -28.0, -34.0}) {
        CAPTURE(level);
        const auto heard =
            test::hear({note(1, 57), singer::Rest{Seconds(0.15)},
                        singer::Breath{.length = Seconds(0.4), .level = Decibels(level)}, note(1, 60)},
                       {.seed = 5});
        REQUIRE(heard.said.breaths.size() == 1);
        const Breath& b = heard.said.breaths[0];
        const Span truth = heard.sung.truth.breaths[0].span;
        CHECK(b.evidence_kind == BreathEvidence::heard);
        CHECK(b.span.start.value() == Approx(truth.start.value()).margin(0.12));
        CHECK(b.span.end.value() == Approx(truth.end.value()).margin(0.08));
        CHECK(b.confidence.value > 0.5);
        CHECK(b.evidence.find("dB over the quiet") != std::string::npos);
        CHECK(std::stoi(b.evidence.substr(b.evidence.find("noise ") + 6)) < 70); // as a room can have
        REQUIRE(b.below_voice);
        CHECK(b.below_voice->value() == Approx(-level).margin(8));
    }
}

TEST_CASE("a louder breath stands less far under the singing than a soft one") {
    const auto below = [](double level) {
        const auto heard =
            test::hear({note(1, 57), singer::Rest{Seconds(0.15)},
                        singer::Breath{.length = Seconds(0.4), .level = Decibels(level)}, note(1, 60)});
        REQUIRE(heard.said.breaths.size() == 1);
        return heard.said.breaths[0].below_voice.value().value();
    };
    CHECK(below(-34) - below(-24) == Approx(10).margin(2));
}

namespace {
int claimed_without_any(bool kinds) {
    int claimed = 0;
    for (const std::uint64_t seed : {301u, 302u, 303u, 304u}) {
        const auto heard =
            test::hear(scenes::SongPlan{.seed = seed, .phrases = 4, .breaths = false, .kinds = kinds});
        REQUIRE(heard.said.notes.size() > 10);
        claimed += static_cast<int>(heard.said.breaths.size());
    }
    return claimed;
}
} // namespace

TEST_CASE("in songs without a breath none is claimed, consonants and rests notwithstanding") {
    CHECK(claimed_without_any(false) == 0);
}

TEST_CASE("the air in breathy onsets is no breath") {
    CHECK(claimed_without_any(true) == 0);
}

TEST_CASE("the hisses, bursts and murmurs of consonants are no breaths") {
    for (const auto c : {singer::Consonant::s, singer::Consonant::f, singer::Consonant::t,
                         singer::Consonant::k, singer::Consonant::h, singer::Consonant::m}) {
        CAPTURE(int(c));
        std::vector<singer::Event> events;
        for (int k = 0; k < 5; ++k) {
            auto n = note(0.8, 57 + 2 * (k % 3));
            n.consonant = c;
            n.start = k == 0 ? singer::Start::balanced : singer::Start::legato;
            events.emplace_back(n);
            if (k == 2) events.emplace_back(singer::Rest{Seconds(0.3)});
        }
        const auto heard = test::hear(events, {.seed = 7});
        CHECK(heard.said.breaths.empty());
    }
}

namespace {
const std::vector<singer::Event> kRests{note(1, 57), singer::Rest{Seconds(0.8)}, note(1, 60),
                                        singer::Rest{Seconds(0.5)}, note(1, 62)};
}

TEST_CASE("a silent pause alone is no breath") {
    CHECK(test::hear(kRests, {.seed = 8}).said.breaths.empty());
}

TEST_CASE("a room's tail is no breath") {
    const auto dry = test::hear(kRests, {.seed = 8});
    CHECK(
        test::listen_to(singer::in_room(dry.sung.samples, dry.sung.rate, {}), dry.sung.rate).breaths.empty());
}

TEST_CASE("a [sh] in the line is no breath") {
    std::vector<singer::Event> events;
    for (int k = 0; k < 5; ++k) {
        auto n = note(0.8, 57 + 2 * (k % 3));
        n.consonant = singer::Consonant::sh;
        n.start = k == 0 ? singer::Start::balanced : singer::Start::legato;
        events.emplace_back(n);
    }
    CHECK(test::hear(events, {.seed = 7}).said.breaths.empty());
}

TEST_CASE("breaths are still found in a room with a noise floor") {
    reference::Score score;
    for (const std::uint64_t seed : {311u, 312u, 313u}) {
        const auto sung = scenes::sing({.seed = seed, .phrases = 4});
        const auto said = test::listen_to(singer::in_room(sung.samples, sung.rate, {}), sung.rate);
        score +=
            reference::score_of(test::match_spans(sung.truth.breaths, said.breaths), said.breaths.size());
    }
    CAPTURE(score.hits, score.said, score.there);
    CHECK(score.f() >= 0.85);
}

TEST_CASE("a quick breath within a line is told from one between lines") {
    const auto heard = test::hear({note(0.6, 57), note(0.8, 60), singer::Breath{.length = Seconds(0.26)},
                                   note(0.5, 62), note(0.9, 59), singer::Rest{Seconds(0.5)},
                                   singer::Breath{.length = Seconds(0.5)}, note(0.6, 57), note(1.2, 55)},
                                  {.seed = 12});
    REQUIRE(heard.said.breaths.size() == 2);
    CHECK(heard.said.breaths[0].inside_phrase);
    CHECK_FALSE(heard.said.breaths[1].inside_phrase);
}
