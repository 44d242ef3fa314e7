// Scoops, drift, a crack, another vowel and a looser closure, put into songs and heard by the real ear. Seeds
// from 1221 on.
#include "compare/differences.h"
#include "compare/twice.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

using enum DifferenceKind;

singer::Song plain_song(std::uint64_t seed, int phrases = 6) {
    singer::Song song = scenes::random_song(
        {.seed = seed, .phrases = phrases, .consonants = false, .kinds = false, .vibrato = false});
    for (singer::Phrase& p : song.phrases)
        for (singer::Event& e : p.events)
            if (auto* n = std::get_if<singer::SungNote>(&e)) n->vowel = singer::Vowel::a;
    return song;
}

/// The last note of a phrase: 1 s long and more.
singer::SungNote& last_note(singer::Song& song, std::size_t phrase) {
    singer::SungNote* last = nullptr;
    for (singer::Event& e : song.phrases.at(phrase).events)
        if (auto* n = std::get_if<singer::SungNote>(&e)) last = n;
    return *last;
}

struct Result {
    std::vector<Difference> all;
    singer::Truth truth; ///< of A

    /// Those of a kind that lie on the last note of a phrase.
    [[nodiscard]] std::vector<Difference> at(DifferenceKind kind, std::size_t phrase) const {
        Span note;
        for (const singer::TrueNote& n : truth.notes)
            if (n.phrase == phrase) note = n.span;
        std::vector<Difference> out;
        for (const Difference& d : all)
            if (d.kind == kind && d.a && d.a->overlaps(note)) out.push_back(d);
        return out;
    }
    [[nodiscard]] std::size_t of(DifferenceKind kind) const {
        return static_cast<std::size_t>(std::ranges::count(all, kind, &Difference::kind));
    }
};

Result compared(const singer::Song& first, const singer::Song& second,
                const singer::Singer& of_b = {.seed = 8}) {
    const auto a = singer::render(first, {.seed = 7}, {44100}), b = singer::render(second, of_b, {44100});
    const Side side_a = heard_in(a, {.seed = 1, .hiss = Decibels(-66)}),
               side_b = heard_in(b, {.seed = 2, .hiss = Decibels(-66)});
    const Alignment alignment = align(side_a, side_b);
    return {find_differences(side_a, side_b, alignment, find_counterparts(side_a, side_b, alignment)),
            a.truth};
}

void show(const Result& r) {
    for (const Difference& d : r.all)
        UNSCOPED_INFO(name_of(d.kind) << " " << d.size << " +- " << d.expected << ": " << d.sentence);
}

} // namespace

TEST_CASE("a held note that sinks by 60 cents is heard and told, and no other drift is") {
    for (const std::uint64_t seed : {1221, 1222}) {
        const auto song = plain_song(seed);
        auto other = song;
        last_note(other, 3).drift = Cents(-60);
        const Result r = compared(song, other);
        show(r);
        REQUIRE(r.at(drift, 3).size() == 1);
        CHECK(r.at(drift, 3)[0].size < -25); // of the steady part
        CHECK(r.of(drift) == 1);
    }
}

TEST_CASE("a crack in a held note is heard and told, and no other is") {
    for (const std::uint64_t seed : {1223, 1224}) {
        const auto song = plain_song(seed);
        auto other = song;
        singer::SungNote& n = last_note(other, 2);
        n.flip = singer::Flip{n.length * 0.5, marks::Register::head, true};
        const Result r = compared(song, other);
        show(r);
        CHECK(r.at(crack, 2).size() == 1);
        CHECK(r.of(crack) == 1);
    }
}

TEST_CASE("a vowel sung otherwise is heard and told, and no other is") {
    for (const std::uint64_t seed : {1225, 1226}) {
        const auto song = plain_song(seed);
        auto other = song;
        last_note(other, 1).vowel = singer::Vowel::i;
        const Result r = compared(song, other);
        show(r);
        REQUIRE(r.at(vowel, 1).size() == 1);
        CHECK(r.of(vowel) == 1);
        CHECK(r.at(vowel, 1)[0].sentence.find("closer") != std::string::npos);
    }
}

TEST_CASE("notes reached from below line after line are told over all") {
    const auto song = plain_song(1227, 12);
    auto other = song;
    for (singer::Phrase& p : other.phrases)
        for (singer::Event& e : p.events)
            if (auto* n = std::get_if<singer::SungNote>(&e)) {
                n->scoop = Cents(160);
                break;
            }
    const Result r = compared(song, other);
    show(r);
    const auto whole =
        std::ranges::find_if(r.all, [](const Difference& d) { return d.kind == scoop && !d.a; });
    REQUIRE(whole != r.all.end());
    CHECK(whole->size >= 8);
    CHECK(whole->expected < 0.01);
}

TEST_CASE("a voice with a looser closure is told over all, and the same voice isn't") {
    const auto song = plain_song(1228);
    const Result r = compared(song, song, {.rd_chest = 2.2, .breathiness = Decibels(-24), .seed = 8});
    show(r);
    const auto whole =
        std::ranges::find_if(r.all, [](const Difference& d) { return d.kind == closure && !d.a; });
    REQUIRE(whole != r.all.end());
    CHECK(whole->size > 0); // the first harmonic stands out more
    CHECK(compared(song, song).of(closure) == 0);
}
