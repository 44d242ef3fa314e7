// Notes of songs by chance: where they begin, what pitch, and what each one carries.
#include "marks/heard.h"

#include <catch2/catch.hpp>

#include <cstdio>

using namespace luft;
using namespace luft::marks;
using reference::NoteRule;
using reference::Score;
using singer::SungNote;
using singer::VoiceType;

namespace {

struct Figures {
    Score onset, pitched, breaths, phrase_ends, onsets_kinds, offset_kinds;
};

constexpr auto kSongs = {201, 202, 203};
constexpr std::array kVoices{VoiceType::bass, VoiceType::tenor, VoiceType::alto, VoiceType::soprano};
constexpr std::array<const char*, 5> kNames{"bass", "tenor", "countertenor", "alto", "soprano"};

Figures measure(VoiceType voice) {
    Figures f;
    for (const int seed : kSongs) {
        const auto heard =
            test::hear({.voice = voice, .seed = static_cast<std::uint64_t>(seed), .phrases = 4});
        const auto& truth = heard.sung.truth;
        const auto there = test::timed(truth.notes), said = test::timed(heard.said.notes);
        f.onset += reference::score_notes(there, said, NoteRule::onset);
        f.pitched += reference::score_notes(there, said, NoteRule::onset_pitch);
        f.breaths += reference::score_of(test::match_spans(truth.breaths, heard.said.breaths),
                                         heard.said.breaths.size());
        f.phrase_ends += reference::score_of(
            reference::match(truth.phrases.size(), heard.said.phrases.size(),
                             [&](std::size_t t, std::size_t s) {
                                 return std::abs(truth.phrases[t].span.end.value() -
                                                 heard.said.phrases[s].span.end.value()) <= 0.3;
                             }),
            heard.said.phrases.size());
        // Kinds, of the notes found within 0.1 s that have a start or end of their own.
        const auto matched = reference::match_notes(there, said, NoteRule::onset, 0.1);
        for (std::size_t i = 0; i < matched.size(); ++i) {
            if (matched[i] < 0) continue;
            const Note& n = heard.said.notes[static_cast<std::size_t>(matched[i])];
            const auto count = [](Score& s, bool right) { s += {right ? 1.0 : 0.0, 1, 1}; };
            if (truth.notes[i].onset) count(f.onsets_kinds, n.onset.kind == *truth.notes[i].onset);
            if (truth.notes[i].offset) count(f.offset_kinds, n.offset.kind == *truth.notes[i].offset);
        }
    }
    return f;
}

} // namespace

// Onsets of notes within 50 ms by MIREX's rule; phrase ends within 0.3 s. Pinned with margin under what was
// measured on songs 201 to 203 (see [figures]).
TEST_CASE("notes, breaths, phrases and kinds of songs are found as well as was measured") {
    Figures all;
    for (const auto voice : kVoices) {
        CAPTURE(kNames[static_cast<std::size_t>(voice)]);
        const Figures f = measure(voice);
        CHECK(f.onset.f() >= 0.96);             // measured 0.986 to 1
        CHECK(f.pitched.f() >= 0.96);           // 0.986 to 1
        CHECK(f.breaths.f() >= 0.96);           // 1
        CHECK(f.phrase_ends.f() >= 0.95);       // 1
        CHECK(f.offset_kinds.recall() >= 0.83); // 0.917 to 1
        all.onsets_kinds += f.onsets_kinds;
    }
    CHECK(all.onsets_kinds.recall() >= 0.82); // measured 0.896
}

TEST_CASE("figures: marks of songs", "[.][figures]") {
    std::printf("%-10s %9s %9s %9s %9s %9s %9s\n", "voice", "onset F", "+pitch F", "breath F", "phrase F",
                "on kind", "off kind");
    for (const auto voice : kVoices) {
        const Figures f = measure(voice);
        std::printf("%-10s %9.3f %9.3f %9.3f %9.3f %9.3f %9.3f\n", kNames[static_cast<std::size_t>(voice)],
                    f.onset.f(), f.pitched.f(), f.breaths.f(), f.phrase_ends.f(), f.onsets_kinds.recall(),
                    f.offset_kinds.recall());
    }
}

TEST_CASE("a note that m, n or l joins to the one before begins with the consonant, also on the same pitch") {
    for (const auto consonant : {singer::Consonant::m, singer::Consonant::n, singer::Consonant::l})
        for (const auto voice : {VoiceType::bass, VoiceType::tenor, VoiceType::alto}) {
            const double low = scenes::lowest_of(voice);
            std::vector<singer::Event> line;
            for (const double p : {7.0, 7.0, 9.0, 5.0})
                line.emplace_back(
                    SungNote{.length = Seconds(0.6),
                             .pitch = MidiPitch(low + p),
                             .start = line.empty() ? singer::Start::balanced : singer::Start::legato,
                             .consonant = line.empty() ? singer::Consonant::none : consonant});
            const auto heard = test::hear(line, {.voice = voice, .seed = 73});
            CAPTURE(int(consonant), int(voice));
            REQUIRE(heard.said.notes.size() == 4);
            for (std::size_t k = 1; k < 4; ++k)
                CHECK(std::abs(
                          (heard.said.notes[k].span.start - heard.sung.truth.notes[k].span.start).value()) <
                      0.04);
        }
}
