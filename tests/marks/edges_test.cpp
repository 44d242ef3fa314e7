// How notes start and end: kinds that were sung on purpose.
#include "marks/heard.h"
#include "singer/room.h"

#include <catch2/catch.hpp>

#include <cstdio>

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

namespace {

struct Kinds {
    int right = 0, all = 0, sure = 0, sure_right = 0;
};

/// Onsets of whole songs, dry or in a room; consonants and joined notes have no kind.
Kinds onsets_of_songs(bool in_room) {
    Kinds k;
    for (const auto voice : {singer::VoiceType::bass, singer::VoiceType::tenor, singer::VoiceType::alto,
                             singer::VoiceType::soprano})
        for (const std::uint64_t seed : {421u, 422u, 423u}) {
            const auto sung = scenes::sing({.voice = voice, .seed = seed, .phrases = 6});
            const auto said = test::listen_to(
                in_room ? singer::in_room(sung.samples, sung.rate, {.seed = seed}) : sung.samples, sung.rate);
            const auto found = reference::match_notes(test::timed(sung.truth.notes), test::timed(said.notes),
                                                      reference::NoteRule::onset_pitch);
            for (std::size_t i = 0; i < found.size(); ++i) {
                const auto& truth = sung.truth.notes[i];
                if (!truth.onset || found[i] < 0) continue;
                const Onset& onset = said.notes[static_cast<std::size_t>(found[i])].onset;
                const bool is_right = onset.kind == *truth.onset, is_sure = onset.confidence.value >= 0.75;
                ++k.all;
                k.right += is_right;
                k.sure += is_sure;
                k.sure_right += is_right && is_sure;
            }
        }
    return k;
}

} // namespace

TEST_CASE("figures: onsets", "[.][figures]") {
    for (const bool in_room : {false, true}) {
        const Kinds k = onsets_of_songs(in_room);
        std::printf("onsets %s: %d of %d right; of those said with 0.75 and more %d of %d\n",
                    in_room ? "in a room" : "dry", k.right, k.all, k.sure_right, k.sure);
    }
}

// Pinned with margin under what was measured (see [figures]): 65 of 72 dry and 57 of 72 in a room; of those
// said with 0.75 and more 56 of 58 and 40 of 43.
TEST_CASE("onsets in songs are judged as well as was measured, and those said with confidence are right") {
    for (const bool in_room : {false, true}) {
        const Kinds k = onsets_of_songs(in_room);
        CAPTURE(in_room, k.right, k.all, k.sure_right, k.sure);
        CHECK(k.all >= 65);
        CHECK(k.right >= (in_room ? 0.74 : 0.86) * k.all);
        CHECK(k.sure >= (in_room ? 35 : 50));
        CHECK(k.sure_right >= 0.85 * k.sure);
    }
}

TEST_CASE("a hard start after a short stop within a line is judged on its own") {
    int glottal = 0, all = 0;
    for (const auto voice : {singer::VoiceType::bass, singer::VoiceType::tenor, singer::VoiceType::alto}) {
        const double low = scenes::lowest_of(voice);
        std::vector<singer::Event> line{SungNote{.length = Seconds(0.7), .pitch = MidiPitch(low + 7)}};
        for (const double p : {9.0, 7.0, 5.0})
            line.emplace_back(SungNote{
                .length = Seconds(0.7), .pitch = MidiPitch(low + p), .start = singer::Start::glottal});
        const auto heard = test::hear(line, {.voice = voice, .seed = 98});
        REQUIRE(heard.said.notes.size() == 4);
        for (std::size_t i = 1; i < 4; ++i) {
            ++all;
            glottal += heard.said.notes[i].onset.kind == OnsetKind::glottal;
        }
    }
    CAPTURE(glottal, all);
    CHECK(glottal >= all - 2);
}
