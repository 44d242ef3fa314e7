// Phrase to phrase and note to note.
#include "compare/material.h"

#include <catch2/catch.hpp>

#include <set>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

constexpr Manner kOther{.seed = 2, .speed = 0.9, .rubato = 0.1, .semitones = 4};

/// Joins the phrases of a side from `first` to the one after it, as when no breath is taken between them.
void join(Side& side, std::size_t first) {
    side.phrases[first].span.end = side.phrases[first + 1].span.end;
    side.phrases.erase(side.phrases.begin() + static_cast<std::ptrdiff_t>(first) + 1);
}

} // namespace

TEST_CASE("every note of the same score has its counterpart, and no pitch is apart") {
    for (const std::uint64_t seed : {461, 462, 463}) {
        const Score score = random_score(seed, 3);
        const Performed a = perform(score, {}), b = perform(score, kOther);
        const Counterparts found = find_counterparts(a.side, b.side, align(a.side, b.side));
        REQUIRE(found.notes.size() == a.notes.size());
        for (const NotePair& p : found.notes) {
            CHECK(a.notes[p.a].id == b.notes[p.b].id);
            CHECK(std::abs(p.apart.value()) < 50);
        }
        CHECK(found.added_by_a.empty());
        CHECK(found.added_by_b.empty());
        REQUIRE(found.phrases.size() == 12);
        for (std::size_t i = 0; i < 12; ++i) {
            CHECK(found.phrases[i].a == std::vector{i});
            CHECK(found.phrases[i].b == std::vector{i});
        }
    }
}

TEST_CASE("a phrase that the other breaks in two, or joins with the next, is told as such") {
    const Score score = random_score(464, 2);
    Performed a = perform(score, {}), b = perform(score, kOther);
    join(a.side, 1); // a sings 1 and 2 in one breath
    join(b.side, 4); // b sings 4 and 5 in one breath
    const Counterparts found = find_counterparts(a.side, b.side, align(a.side, b.side));
    REQUIRE(found.phrases.size() == 6);
    CHECK(found.phrases[1].a == std::vector<std::size_t>{1});
    CHECK(found.phrases[1].b == std::vector<std::size_t>{1, 2});
    CHECK(found.phrases[3].a == std::vector<std::size_t>{3, 4});
    CHECK(found.phrases[3].b == std::vector<std::size_t>{4});
}

TEST_CASE("phrases of a section that one doesn't sing have no counterpart, and neither have their notes") {
    const Score score = random_score(465, 4);
    Manner without = kOther;
    without.sections = {0, 1, 3};
    const Performed a = perform(score, {}), b = perform(score, without);
    const Counterparts found = find_counterparts(a.side, b.side, align(a.side, b.side));
    CHECK(found.phrases_only_a == std::vector<std::size_t>{8, 9, 10, 11});
    CHECK(found.phrases_only_b.empty());
    CHECK(found.added_by_a.empty());
    for (const std::size_t i : found.notes_only_a)
        CHECK(a.sections[2].contains(a.notes[i].span.start));
    CHECK(found.notes_only_b.empty());
}

TEST_CASE("added notes of a turn are named, and the note that they adorn keeps its counterpart") {
    int turns = 0, named = 0, wrong = 0;
    for (const std::uint64_t seed : {466, 467, 468, 469}) {
        const Score score = random_score(seed, 3);
        Manner adorned = kOther;
        adorned.ornaments = 0.5;
        const Performed a = perform(score, {}), b = perform(score, adorned);
        const Counterparts found = find_counterparts(a.side, b.side, align(a.side, b.side));
        const std::set<std::size_t> added(found.added_by_b.begin(), found.added_by_b.end());
        for (std::size_t i = 0; i < b.notes.size(); ++i) {
            const bool extra = b.notes[i].id < 0;
            turns += extra;
            named += extra && added.contains(i);
            wrong += !extra && added.contains(i);
        }
        CHECK(found.added_by_a.size() <= 1);
    }
    REQUIRE(turns > 40);
    CHECK(named >= 0.9 * turns);
    CHECK(wrong <= 0.1 * turns);
}

TEST_CASE("a note sung at another pitch is a counterpart whose pitch is apart") {
    int changes = 0, found = 0;
    for (const std::uint64_t seed : {470, 471, 472, 473}) {
        const Score score = random_score(seed, 3);
        Score changed = score;
        std::set<int> ids;
        for (auto& section : changed.sections)
            for (ScorePhrase& phrase : section) {
                phrase.notes[2].pitch += 3;
                ids.insert(phrase.notes[2].id);
            }
        const Performed a = perform(score, {}), b = perform(changed, kOther);
        changes += static_cast<int>(ids.size());
        for (const NotePair& p : find_counterparts(a.side, b.side, align(a.side, b.side)).notes) {
            const int id = a.notes[p.a].id;
            if (ids.contains(id) && b.notes[p.b].id == id && std::abs(p.apart.value() - 300) < 50) ++found;
        }
    }
    INFO(found << " of " << changes);
    CHECK(found >= 0.8 * changes);
}
