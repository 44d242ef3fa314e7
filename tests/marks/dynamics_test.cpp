// Dynamic marks in the singer's own range.
#include "marks/dynamics.h"
#include "marks/level_scenes.h"

#include <catch2/catch.hpp>

#include <set>

using namespace luft;
using namespace luft::marks;

namespace {

std::vector<Note> notes_at(const std::vector<double>& levels) {
    std::vector<Note> notes;
    for (const double level : levels) {
        Note n;
        n.span = {Seconds(static_cast<double>(notes.size())),
                  Seconds(static_cast<double>(notes.size()) + 0.9)};
        n.level = Decibels(level);
        n.confidence = {0.9};
        notes.push_back(n);
    }
    return notes;
}

std::vector<double> ladder(double from, double step, int count) {
    std::vector<double> out;
    for (int i = 0; i < count; ++i)
        out.push_back(from + step * i);
    return out;
}

std::set<Dynamic> marked(std::vector<Note> notes, voice::Setting how = voice::Setting::alone) {
    std::vector<Phrase> none;
    mark_dynamics(notes, none, how);
    std::set<Dynamic> out;
    for (const Note& n : notes)
        if (n.dynamic) out.insert(*n.dynamic);
    return out;
}

} // namespace

TEST_CASE("a range has as many dynamic marks as it has room for, around mp and mf") {
    using enum Dynamic;
    CHECK(marked(notes_at(ladder(-30, 0.1, 20))) == std::set{mf});
    CHECK(marked(notes_at(ladder(-30, 0.25, 20))) == std::set{mf}); // 4.75 dB
    CHECK(marked(notes_at(ladder(-30, 0.4, 20))) == std::set{mp, mf});
    CHECK(marked(notes_at(ladder(-30, 0.55, 20))) == std::set{mp, mf, f});
    CHECK(marked(notes_at(ladder(-30, 0.75, 20))) == std::set{p, mp, mf, f});
    CHECK(marked(notes_at(ladder(-30, 1.5, 20))) == std::set{pp, p, mp, mf, f, ff});
    // Among instruments a step is wider.
    CHECK(marked(notes_at(ladder(-30, 0.55, 20)), voice::Setting::accompanied) == std::set{mf});
}

TEST_CASE("dynamic marks don't depend on how loud the recording is, and rise with level") {
    auto quiet = notes_at(ladder(-60, 1.1, 17)), loud = notes_at(ladder(-20, 1.1, 17));
    std::vector<Phrase> phrases(1);
    phrases[0].span = {Seconds(13), Seconds(17)};
    mark_dynamics(quiet, phrases, voice::Setting::alone);
    CHECK(phrases[0].dynamic == Dynamic::ff);
    mark_dynamics(loud, phrases, voice::Setting::alone);
    for (std::size_t i = 0; i < quiet.size(); ++i) {
        CHECK(quiet[i].dynamic == loud[i].dynamic);
        if (i > 0) CHECK(*quiet[i].dynamic >= *quiet[i - 1].dynamic);
    }
}

TEST_CASE("a handful of notes has no range, so no dynamic marks") {
    CHECK(marked(notes_at(ladder(-30, 3, 7))).empty());
    CHECK(marked({}).empty());
}

TEST_CASE("soft phrases and loud ones are marked so as they were sung") {
    for (const std::uint64_t seed : {1431, 1433}) {
        const auto voice = static_cast<singer::VoiceType>(seed % 5);
        singer::Song song = test::shaped_song({.voice = voice, .seed = seed, .phrases = 6, .accents = 0.5});
        for (std::size_t p = 0; p < song.phrases.size(); ++p)
            for (auto& e : song.phrases[p].events)
                if (auto* n = std::get_if<singer::SungNote>(&e)) n->level += Decibels(p % 2 ? 6 : -6);
        const auto h = test::hear(song, {.voice = voice, .seed = seed}, test::Where::dry);
        REQUIRE(h.said.phrases.size() == song.phrases.size());
        for (std::size_t p = 0; p < h.said.phrases.size(); ++p) {
            CAPTURE(seed, p);
            REQUIRE(h.said.phrases[p].dynamic);
            CHECK((*h.said.phrases[p].dynamic >= Dynamic::f) == (p % 2 == 1));
            CHECK((*h.said.phrases[p].dynamic <= Dynamic::p) == (p % 2 == 0));
        }
    }
}
