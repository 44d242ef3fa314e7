// How notes start and end: kinds that were sung on purpose.
#include "marks/heard.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::marks;
using singer::SungNote;

namespace {

/// One note of each voice type with the given start and end, alone.
template <class Check>
void each_voice(SungNote note, const Check& check) {
    std::uint64_t seed = 90;
    for (const auto voice : {singer::VoiceType::bass, singer::VoiceType::tenor, singer::VoiceType::alto}) {
        CAPTURE(int(voice));
        note.length = Seconds(1.4);
        note.pitch = MidiPitch(scenes::lowest_of(voice) + 9);
        const auto heard = test::hear({note, singer::Rest{Seconds(0.6)}}, {.voice = voice, .seed = ++seed});
        REQUIRE(heard.said.notes.size() == 1);
        check(heard.said.notes[0]);
    }
}

} // namespace

// Rise times from 10 to 90 %: hard 10 to 30 ms, balanced 30 to 90, breathy over 90 (common practice, no
// source); the aspirate has flow before closure (Watson, Baken & Roark).
TEST_CASE("glottal, balanced and breathy onsets of single notes are told apart") {
    const auto check_kind = [](singer::Start start, OnsetKind kind) {
        each_voice({.start = start}, [&](const Note& n) {
            CAPTURE(int(kind), n.onset.evidence);
            CHECK(n.onset.kind == kind);
            CHECK(n.onset.confidence.value >= 0.5);
        });
    };
    check_kind(singer::Start::glottal, OnsetKind::glottal);
    check_kind(singer::Start::balanced, OnsetKind::balanced);
    check_kind(singer::Start::breathy, OnsetKind::breathy);
}

TEST_CASE("a breath in before a balanced onset is not taken for air in the tone's start") {
    int right = 0, all = 0;
    for (const auto voice : {singer::VoiceType::bass, singer::VoiceType::tenor, singer::VoiceType::alto,
                             singer::VoiceType::soprano})
        for (const std::uint64_t seed : {95u, 96u, 97u}) {
            const auto heard =
                test::hear({singer::Breath{}, SungNote{.length = Seconds(1.2),
                                                       .pitch = MidiPitch(scenes::lowest_of(voice) + 9)}},
                           {.voice = voice, .seed = seed});
            REQUIRE_FALSE(heard.said.notes.empty());
            ++all;
            if (heard.said.notes[0].onset.kind == OnsetKind::balanced) ++right;
        }
    CAPTURE(right, all);
    CHECK(right >= all - 1);
}

TEST_CASE("the evidence for air before a tone is a level that a room can have, also after digital silence") {
    each_voice({.start = singer::Start::breathy}, [](const Note& n) {
        const auto& words = n.onset.evidence;
        const auto at = words.find("air before the tone ");
        REQUIRE(at != std::string::npos);
        CHECK(std::stoi(words.substr(at + 20)) < 70); // dB
    });
}

TEST_CASE("clean, breathy and trailing offsets of single notes are told apart") {
    for (const auto kind : {OffsetKind::clean, OffsetKind::breathy, OffsetKind::trailing})
        each_voice({.end = kind}, [&](const Note& n) {
            CAPTURE(int(kind), n.offset.evidence);
            CHECK(n.offset.kind == kind);
            CHECK_FALSE(n.offset.evidence.empty());
        });
}

TEST_CASE("a note joined to the one before has no start of its own, and says so with little confidence") {
    const auto heard = test::hear(
        {SungNote{.length = Seconds(0.8), .pitch = MidiPitch(57)},
         SungNote{.length = Seconds(0.8), .pitch = MidiPitch(61), .start = singer::Start::legato}});
    REQUIRE(heard.said.notes.size() == 2);
    CHECK(heard.said.notes[1].onset.kind == OnsetKind::balanced);
    CHECK(heard.said.notes[1].onset.confidence.value < 0.5);
    CHECK(heard.said.notes[0].offset.confidence.value < 0.5);
}
