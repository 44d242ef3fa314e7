// Registers and switches: both registers told apart where a singer uses two, 'one register' where not.
#include "marks/heard.h"

#include <catch2/catch.hpp>

#include <cstdio>

using namespace luft;
using namespace luft::marks;
using singer::SungNote;

namespace {

constexpr std::array kVoices{singer::VoiceType::bass, singer::VoiceType::tenor, singer::VoiceType::alto,
                             singer::VoiceType::soprano};

/// Songs of 6 phrases that truly use both registers: the upper third of the range isn't reached in all.
std::vector<test::Heard> in_two_registers(singer::VoiceType voice) {
    std::vector<test::Heard> songs;
    for (std::uint64_t seed = 401; songs.size() < 3; ++seed) {
        const scenes::SongPlan plan{.voice = voice, .seed = seed, .phrases = 6, .two_registers = true};
        if (std::ranges::count(scenes::sing(plan).truth.notes, Register::head, &singer::TrueNote::sung_in) >=
            4)
            songs.push_back(test::hear(plan));
    }
    return songs;
}

struct Figures {
    reference::Score switches;
    double notes = 0, right = 0;
    int songs = 0, wrong_way = 0, one_register = 0, two_in_one = 0;
};

void score(const test::Heard& heard, Figures& f) {
    const auto& truth = heard.sung.truth;
    ++f.songs;
    if (heard.said.one_register) ++f.one_register;
    // Changes over a rest between two phrases aren't marked as switches.
    std::vector<singer::TrueSwitch> inside;
    for (const auto& s : truth.switches)
        if (std::ranges::any_of(truth.phrases, [&](const auto& p) {
                return s.time > p.span.start + Seconds(0.02) && s.time < p.span.end;
            }))
            inside.push_back(s);
    const auto matched =
        reference::match(inside.size(), heard.said.switches.size(), [&](std::size_t t, std::size_t s) {
            return std::abs((inside[t].time - heard.said.switches[s].time).value()) <= 0.15;
        });
    f.switches += reference::score_of(matched, heard.said.switches.size());
    for (std::size_t i = 0; i < matched.size(); ++i)
        if (matched[i] >= 0 && heard.said.switches[static_cast<std::size_t>(matched[i])].to != inside[i].to)
            ++f.wrong_way;
    const auto notes = reference::match_notes(test::timed(truth.notes), test::timed(heard.said.notes),
                                              reference::NoteRule::onset_pitch);
    for (std::size_t i = 0; i < notes.size(); ++i)
        if (notes[i] >= 0) {
            ++f.notes;
            if (heard.said.notes[static_cast<std::size_t>(notes[i])].sung_in == truth.notes[i].sung_in)
                ++f.right;
        }
}

Figures measure() {
    Figures f;
    for (const auto voice : kVoices) {
        for (const auto& heard : in_two_registers(voice))
            score(heard, f);
        for (const std::uint64_t seed : {401u, 402u, 403u}) {
            const auto one = test::hear({.voice = voice, .seed = seed, .phrases = 6});
            if (!one.said.one_register) ++f.two_in_one;
        }
    }
    return f;
}

} // namespace

TEST_CASE("figures: registers", "[.][figures]") {
    const Figures f = measure();
    std::printf(
        "switches F %.3f (hits %.0f, said %.0f, there %.0f), wrong way %d, notes right %.3f, said one "
        "register %d of %d, two where there is one %d of %d\n",
        f.switches.f(), f.switches.hits, f.switches.said, f.switches.there, f.wrong_way, f.right / f.notes,
        f.one_register, f.songs, f.two_in_one, f.songs);
}

// Wished for is an F of 0.90 at 0.15 s and the right register on nearly every note. This singer's registers
// go strictly with pitch, which helps. Pinned under what was measured (see [figures]).
TEST_CASE("switches are found as well as was measured, and none the wrong way round") {
    const Figures f = measure();
    CHECK(f.songs == 12);
    CHECK(f.wrong_way == 0);
    CHECK(f.switches.f() >= 0.86);    // measured 0.924
    CHECK(f.right / f.notes >= 0.95); // measured 0.990; in songs called 'one register' every note is wrong
    CHECK(f.one_register <= 1);       // measured 0
    CHECK(f.two_in_one <= 2);         // measured 2
}

TEST_CASE("a switch within a joined line is found at its time and with its direction") {
    std::vector<singer::Event> events;
    for (int k = 0; k < 4; ++k) {
        for (const double p : {57.0, 60.0, 64.0})
            events.emplace_back(
                SungNote{.length = Seconds(0.5), .pitch = MidiPitch(p), .start = singer::Start::legato});
        for (const double p : {67.0, 69.0, 67.0})
            events.emplace_back(SungNote{.length = Seconds(0.5),
                                         .pitch = MidiPitch(p),
                                         .start = singer::Start::legato,
                                         .sung_in = Register::head});
        events.emplace_back(singer::Rest{Seconds(0.4)});
    }
    const auto heard = test::hear(events, {.seed = 15});
    REQUIRE_FALSE(heard.said.one_register);
    int found = 0;
    for (const auto& t : heard.sung.truth.switches)
        for (const Switch& s : heard.said.switches)
            if (std::abs((s.time - t.time).value()) <= 0.15) {
                CHECK(s.from == t.from);
                CHECK(s.to == t.to);
                CHECK_FALSE(s.evidence.empty());
                ++found;
                break;
            }
    CHECK(heard.sung.truth.switches.size() == 7);
    CHECK(found >= 4); // the four joined ones upward; those over a rest are found or not
}

TEST_CASE("where there is one register no note is given one, no curve has it and no switch is claimed") {
    const auto heard = test::hear({.voice = singer::VoiceType::bass, .seed = 411, .phrases = 4});
    REQUIRE(heard.said.one_register);
    CHECK(heard.said.switches.empty());
    for (const Note& n : heard.said.notes)
        CHECK_FALSE(n.sung_in);
    for (const float v : heard.said.curves.head_register.raw())
        CHECK(std::isnan(v));
}
