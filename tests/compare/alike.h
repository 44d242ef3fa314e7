// Two performances whose every note is known, alike but for key and tempo: what differences are put into.
#pragma once

#include "compare/differences.h"
#include "compare/material.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace luft::compare::test {

/// A and B alike but for key and tempo.
struct Alike {
    Side a, b;

    explicit Alike(std::uint64_t seed, int semitones = 4) {
        const Score score = random_score(seed, 2);
        a = perform(score, {.unsure = Seconds(0.005)}).side;
        b = perform(score, {.seed = 2, .speed = 0.9, .semitones = semitones, .unsure = Seconds(0.005)}).side;
        for (Side* side : {&a, &b})
            for (marks::Note& n : side->notes) {
                n.pitch = MidiPitch(std::round(n.pitch.value())); // no wander of the note marks
                n.onset = {marks::OnsetKind::balanced, {0.95}, ""};
                n.offset = {marks::OffsetKind::clean, {0.95}, ""};
                n.sung_in = marks::Register::chest;
                n.level = Decibels(-20);
            }
    }

    [[nodiscard]] std::vector<Difference> differences() const {
        const Alignment alignment = align(a, b);
        return find_differences(a, b, alignment, find_counterparts(a, b, alignment));
    }
};

/// All but key and tempo, which are in every pair.
inline std::vector<Difference> beside_key(const Alike& pair) {
    auto all = pair.differences();
    std::erase_if(all, [](const Difference& d) {
        return d.kind == DifferenceKind::key || d.kind == DifferenceKind::tempo;
    });
    return all;
}

inline void check_one(const Alike& pair, DifferenceKind kind, double size, Span b) {
    const auto all = beside_key(pair);
    for (const Difference& d : all)
        UNSCOPED_INFO(name_of(d.kind) << " " << d.size << ": " << d.sentence);
    REQUIRE(all.size() == 1);
    CHECK(all[0].kind == kind);
    CHECK(all[0].size == Approx(size).epsilon(0.15));
    REQUIRE(all[0].b);
    CHECK(all[0].b->overlaps(b));
    CHECK(all[0].sentence.ends_with("."));
    CHECK(all[0].confidence.value > 0.5);
}

/// The longest note.
inline std::size_t held_note(const Side& side) {
    return static_cast<std::size_t>(
        std::ranges::max_element(side.notes, {}, [](const marks::Note& n) { return n.span.length(); }) -
        side.notes.begin());
}

} // namespace luft::compare::test
