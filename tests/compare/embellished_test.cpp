// Turns, mordents and runs that only one of two singers adds, heard by the real ear. Seeds from 1201 on.
#include "compare/differences.h"
#include "compare/twice.h"

#include <catch2/catch.hpp>

#include <cstdio>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

enum class Ornament { turn, mordent, run };

/// The note with an ornament in its place, of the same length in all. Its notes are 0.13 s long: eight a
/// second.
std::vector<singer::Event> adorned(const singer::SungNote& plain, Ornament how) {
    constexpr Seconds kQuick{0.13};
    std::vector<singer::Event> out;
    const auto add = [&](Seconds length, double semitones) {
        singer::SungNote n = plain;
        n.length = length, n.pitch += MidiPitch(semitones);
        n.vibrato.reset(), n.scoop = Cents(0);
        if (!out.empty()) n.start = singer::Start::legato, n.consonant = singer::Consonant::none;
        out.emplace_back(n);
    };
    switch (how) {
    case Ornament::turn: // held, then above, itself, below, itself
        add(plain.length - kQuick * 4, 0);
        for (const double semitones : {2, 0, -2, 0})
            add(kQuick, semitones);
        break;
    case Ornament::mordent: // itself, above, itself
        add(kQuick, 0);
        add(kQuick, 2);
        add(plain.length - kQuick * 2, 0);
        break;
    case Ornament::run: // held, then down by steps
        add(plain.length - kQuick * 3, 0);
        for (const double semitones : {-2, -3, -5})
            add(kQuick, semitones);
        break;
    }
    return out;
}

struct Put {
    singer::Song song;
    std::vector<std::size_t> at; ///< which notes of the plain song
};

/// An ornament on the last note of every other phrase; those are 1 s long and more.
Put embellish(const singer::Song& plain, Ornament how) {
    Put out;
    std::size_t note = 0;
    for (std::size_t p = 0; p < plain.phrases.size(); ++p) {
        singer::Phrase phrase;
        for (const singer::Event& e : plain.phrases[p].events) {
            const auto* n = std::get_if<singer::SungNote>(&e);
            if (n && p % 2 == 1 && n->length > Seconds(0.95)) {
                for (singer::Event& part : adorned(*n, how))
                    phrase.events.push_back(std::move(part));
                out.at.push_back(note);
            } else {
                phrase.events.push_back(e);
            }
            note += n != nullptr;
        }
        out.song.phrases.push_back(std::move(phrase));
    }
    return out;
}

struct Told {
    int put = 0, told = 0, wrong = 0, elsewhere = 0;
};

/// Wrong: told as another note, or as one out of tune, where the ornament is. Elsewhere: added notes claimed
/// where none are.
Told tell(Ornament how, std::uint64_t first, std::uint64_t last, bool in_b) {
    Told out;
    for (std::uint64_t seed = first; seed <= last; ++seed) {
        const auto song = scenes::random_song({.seed = seed, .phrases = 6, .vibrato = false});
        const Put put = embellish(song, how);
        const auto plain = singer::render(song, {.seed = seed}, {44100}),
                   other = singer::render(put.song, {.seed = seed + 50}, {44100});
        const Side p = heard_in(plain, {.seed = seed, .hiss = Decibels(-66)}),
                   o = heard_in(other, {.seed = seed + 1, .hiss = Decibels(-66)});
        const Side &a = in_b ? p : o, &b = in_b ? o : p;
        const Alignment alignment = align(a, b);
        const auto all = find_differences(a, b, alignment, find_counterparts(a, b, alignment));
        std::vector<Span> places; // both take the same time, so that one place serves both
        for (const std::size_t i : put.at)
            places.push_back(plain.truth.notes.at(i).span);
        out.put += static_cast<int>(places.size());
        std::vector<bool> found(places.size());
        for (const Difference& d : all) {
            if (!d.a) continue;
            const auto place = std::ranges::find_if(places, [&](Span s) { return s.overlaps(*d.a); });
            if (d.kind == DifferenceKind::added_notes) {
                if (place == places.end())
                    ++out.elsewhere;
                else if ((d.size > 0) == in_b)
                    found[static_cast<std::size_t>(place - places.begin())] = true;
                else
                    ++out.wrong;
            }
            if (place != places.end() &&
                (d.kind == DifferenceKind::other_note || d.kind == DifferenceKind::note_intonation))
                ++out.wrong;
        }
        out.told += static_cast<int>(std::ranges::count(found, true));
    }
    return out;
}

const char* name(Ornament how) {
    return how == Ornament::turn ? "turn" : how == Ornament::mordent ? "mordent" : "run";
}

} // namespace

TEST_CASE("turns, mordents and runs are told as added notes and not as wrong ones") {
    for (const Ornament how : {Ornament::turn, Ornament::mordent, Ornament::run})
        for (const bool in_b : {true, false}) {
            const Told t = tell(how, 1201, 1202, in_b);
            INFO(name(how) << (in_b ? " in B: " : " in A: ") << t.told << " told of " << t.put << ", wrong "
                           << t.wrong << ", elsewhere " << t.elsewhere);
            REQUIRE(t.put == 6);
            CHECK(t.told >= 5);
            CHECK(t.wrong == 0);
            CHECK(t.elsewhere == 0);
        }
}

TEST_CASE("figures: embellishments heard", "[.][figures][embellished]") {
    for (const Ornament how : {Ornament::turn, Ornament::mordent, Ornament::run})
        for (const bool in_b : {true, false}) {
            const Told t = tell(how, 1203, 1208, in_b);
            std::printf("%-8s in %s: told %d of %d, as wrong notes %d, elsewhere %d\n", name(how),
                        in_b ? "B" : "A", t.told, t.put, t.wrong, t.elsewhere);
            CHECK(t.wrong <= t.put / 10);
        }
}
