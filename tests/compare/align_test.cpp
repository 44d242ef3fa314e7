// Alignment of pieces by chance whose every note's place is known. Seeds from 401 on: what was tuned was
// tuned on seeds 1 to 8, and the confidence on 201 to 240.
#include "compare/material.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

struct Two {
    Performed a, b;
    Alignment found;
    Errors errors;
};

Two two(std::uint64_t seed, Manner first, Manner other, int sections = 4) {
    const Score score = random_score(seed, sections);
    first.seed = seed * 2, other.seed = seed * 2 + 1;
    Two t{perform(score, first), perform(score, other), {}, {}};
    t.found = align(t.a.side, t.b.side);
    t.errors = errors_of(t.a, t.b, t.found);
    return t;
}

bool about(Span said, Span truth, double within) {
    return std::abs((said.start - truth.start).value()) < within &&
           std::abs((said.end - truth.end).value()) < within;
}

} // namespace

TEST_CASE("in another tempo and key, half of the notes are met within 50 ms, and 19 of 20 within 100 ms") {
    const double speed = GENERATE(0.7, 1.0, 1.4);
    const int key = GENERATE(-7, 0, 5, 12);
    for (const std::uint64_t seed : {401, 402, 403}) {
        CAPTURE(speed, key, seed);
        const Two t = two(seed, {}, {.speed = speed, .rubato = 0.1, .semitones = key, .tuning = Cents(30)});
        CHECK(t.found.semitones == key);
        CHECK(t.found.tuning.value() == Approx(30).margin(0.01));
        CHECK(t.errors.median_ms < 50);
        CHECK(t.errors.p95_ms < 100);
        CHECK(t.errors.lost == 0);
        CHECK(t.found.only_a.empty());
        CHECK(t.found.only_b.empty());
    }
}

TEST_CASE("strong rubato on both sides is followed") {
    for (const std::uint64_t seed : {404, 405, 406}) {
        CAPTURE(seed);
        const Two t = two(seed, {.rubato = 0.2}, {.rubato = 0.2});
        CHECK(t.errors.median_ms < 50);
        CHECK(t.errors.p95_ms < 100);
    }
}

TEST_CASE("a section that is cut is named, and nothing else is") {
    for (const std::uint64_t seed : {407, 408, 409}) {
        CAPTURE(seed);
        const Two t = two(seed, {}, {.rubato = 0.1, .semitones = 3, .sections = {0, 1, 3}});
        REQUIRE(t.found.only_a.size() == 1);
        CHECK(about(t.found.only_a[0].span, t.a.sections[2], 2));
        CHECK(t.found.only_a[0].sung);
        CHECK_FALSE(t.found.only_a[0].again);
        CHECK(t.found.only_b.empty());
        CHECK(t.errors.median_ms < 50);
    }
}

TEST_CASE(
    "of a section that is sung twice, the second is named as sung again, with where the other sings it") {
    for (const std::uint64_t seed : {410, 411, 412}) {
        CAPTURE(seed);
        const Two t = two(seed, {}, {.rubato = 0.1, .sections = {0, 1, 1, 2, 3}});
        REQUIRE(t.found.only_b.size() == 1);
        CHECK(about(t.found.only_b[0].span, t.b.sections[2], 2));
        REQUIRE(t.found.only_b[0].again);
        CHECK(about(*t.found.only_b[0].again, t.a.sections[1], 3));
        CHECK(t.found.only_a.empty());
        CHECK(t.errors.median_ms < 50);
    }
}

TEST_CASE("a minute of talk before the song has no counterpart, on either side") {
    for (const std::uint64_t seed : {413, 414, 415}) {
        CAPTURE(seed);
        const Two t = two(seed, {}, {.rubato = 0.1, .semitones = -5, .talk = Seconds(60)});
        REQUIRE(t.found.only_b.size() == 1);
        CHECK(about(t.found.only_b[0].span, t.b.talk, 2));
        CHECK_FALSE(t.found.only_b[0].again);
        CHECK(t.errors.median_ms < 50);
        CHECK(t.found.semitones == -5);
        const Alignment back = align(t.b.side, t.a.side);
        REQUIRE(back.only_a.size() == 1);
        CHECK(about(back.only_a[0].span, t.b.talk, 2));
        CHECK(back.semitones == 5);
    }
}

TEST_CASE("an interlude that only one has is named as not sung") {
    const Two t = two(416, {}, {.rubato = 0.1, .interlude = Seconds(20)});
    REQUIRE(t.found.only_b.size() == 1);
    CHECK_FALSE(t.found.only_b[0].sung);
    CHECK(t.found.only_b[0].span.length().value() == Approx(20).margin(3));
    CHECK(t.errors.median_ms < 50);
}

TEST_CASE("notes that the ear missed or heard an octave off don't lead the path astray") {
    for (const std::uint64_t seed : {417, 418, 419}) {
        CAPTURE(seed);
        const Two t = two(seed, {.missed = 0.1}, {.rubato = 0.1, .missed = 0.1, .octave_slips = 0.1});
        CHECK(t.errors.median_ms < 50);
        CHECK(t.errors.p95_ms < 200);
        CHECK(t.found.semitones == 0);
    }
}

TEST_CASE("of two pieces that have nothing in common, little is taken for counterpart") {
    double aligned = 0, whole = 0;
    for (std::uint64_t seed = 420; seed < 430; ++seed) {
        const Performed a = perform(random_score(seed, 4), {}),
                        b = perform(random_score(seed + 500, 4), {.seed = 2});
        for (const Stretch& s : align(a.side, b.side).stretches)
            aligned += s.a().length().value();
        whole += a.side.duration.value();
    }
    CHECK(aligned < 0.2 * whole);
}

TEST_CASE("the tempo curve says how fast the second is against the first") {
    const Two t = two(431, {}, {.speed = 1.25});
    const std::vector<TempoPoint> curve = tempo_curve(t.found);
    REQUIRE(curve.size() > 20);
    for (const TempoPoint& p : curve)
        CHECK(p.speed == Approx(1.25).epsilon(0.05));
}

TEST_CASE("the way there and back ends where it began, and rises") {
    const Two t = two(432, {}, {.speed = 0.8, .rubato = 0.2, .sections = {0, 2, 3}});
    std::optional<Seconds> before;
    for (Seconds at(0.1); at < t.a.side.duration; at += Seconds(0.37)) {
        const auto there = t.found.to_b(at);
        if (!there) continue;
        CHECK(t.found.to_a(*there).value().value() == Approx(at.value()).margin(1e-6));
        if (before) CHECK(*there > *before);
        before = there;
    }
    CHECK(before);
}

TEST_CASE("confidence is kept: stretches given 0.8 and more are right nine times in ten and more") {
    int notes = 0, right = 0;
    for (std::uint64_t seed = 440; seed < 450; ++seed) {
        const Score score = random_score(seed, 4);
        const Performed a = perform(score, {.seed = seed, .missed = 0.1}),
                        b = perform(score, {.seed = seed + 1,
                                            .rubato = 0.2,
                                            .sections = {0, 2, 3},
                                            .missed = 0.1,
                                            .ornaments = 0.4});
        const Alignment found = align(a.side, b.side);
        for (const Stretch& s : found.stretches) {
            if (s.confidence.value < 0.8) continue;
            for (const PlacedNote& n : a.notes) {
                if (!s.a().contains(n.span.start)) continue;
                ++notes;
                right += std::ranges::any_of(b.notes, [&](const PlacedNote& m) {
                    return m.id == n.id && std::abs((*found.to_b(n.span.start) - m.span.start).value()) < 0.3;
                });
            }
        }
    }
    CHECK(notes > 300);
    CHECK(right >= 0.9 * notes);
}
