// What the coach pins, what can't be aligned, and stopping.
#include "compare/material.h"
#include "singer/random.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

namespace {

void check_rising(const Alignment& found) {
    const Pair* before = nullptr;
    for (const Stretch& s : found.stretches) {
        CHECK(s.knots.size() > 1);
        for (const Pair& knot : s.knots) {
            const bool first = &knot == &s.knots.front(); // stretches may meet
            if (before) CHECK((first ? knot.a >= before->a : knot.a > before->a));
            if (before) CHECK((first ? knot.b >= before->b : knot.b > before->b));
            before = &knot;
        }
    }
}

} // namespace

TEST_CASE("the path goes through every pinned pair") {
    const Score score = random_score(451, 4);
    const Performed a = perform(score, {}), b = perform(score, {.seed = 2, .speed = 0.9});
    const std::vector<Pair> pins{{Seconds(12.34), Seconds(14)}, {Seconds(40), Seconds(43.21)}};
    const Alignment found = align(a.side, b.side, {.pins = pins});
    for (const Pair& p : pins) {
        CHECK(found.to_b(p.a).value().value() == Approx(p.b.value()).margin(1e-9));
        CHECK(found.to_a(p.b).value().value() == Approx(p.a.value()).margin(1e-9));
    }
}

TEST_CASE("pins at both ends decide which of two sections that are alike is meant") {
    const Score score = random_score(452, 4);
    const Performed a = perform(score, {}),
                    b = perform(score, {.seed = 2, .rubato = 0.1, .sections = {0, 1, 1, 2, 3}});
    for (const std::size_t which : {1U, 2U}) {
        const Span there = b.sections[which];
        const std::vector<Pair> pins{{a.sections[1].start, there.start}, {a.sections[1].end, there.end}};
        const Alignment found = align(a.side, b.side, {.pins = pins});
        const auto middle = found.to_b(a.sections[1].middle());
        REQUIRE(middle);
        CHECK(there.contains(*middle));
    }
}

TEST_CASE("pins hold where nothing is alike, close to each other, and in any order") {
    const Performed a = perform(random_score(456, 2), {}), b = perform(random_score(956, 2), {.seed = 2});
    for (double first = 1; first < 30; first += 1.7) {
        const std::vector<Pair> pins{{Seconds(first + 3.01), Seconds(first + 0.51)},
                                     {Seconds(first), Seconds(first + 0.5)},
                                     {Seconds(first + 3), Seconds(first + 0.502)}};
        const Alignment found = align(a.side, b.side, {.pins = pins});
        for (const Pair& p : pins) {
            CAPTURE(first, p.a.value());
            CHECK(found.to_b(p.a).value_or(Seconds(-1)).value() == Approx(p.b.value()).margin(1e-6));
        }
        check_rising(found);
    }
}

TEST_CASE("marks that no ear would set break nothing") {
    singer::Random random(3);
    const Score score = random_score(457, 1);
    for (int round = 0; round < 40; ++round) {
        Performed a = perform(score, {}), b = perform(score, {.seed = 2});
        for (Side* side : {&a.side, &b.side})
            for (int k = 0; k < 30; ++k) {
                marks::Note note; // overlapping, without length, before the start and after the end
                note.span.start = Seconds(-3 + 30 * random.uniform());
                note.span.end = note.span.start + Seconds(std::floor(3 * random.uniform()));
                note.pitch = MidiPitch(40 + 40 * random.uniform());
                side->notes.push_back(note);
            }
        for (Side* side : {&a.side, &b.side})
            std::ranges::stable_sort(side->notes, {}, [](const marks::Note& n) { return n.span.start; });
        if (round % 2 == 0) a.side.duration = Seconds(20 * random.uniform()), b.side.phrases.clear();
        const Alignment found = align(a.side, b.side);
        check_rising(found);
        const Counterparts pairs = find_counterparts(a.side, b.side, found);
        CHECK(pairs.notes.size() + pairs.added_by_a.size() + pairs.notes_only_a.size() ==
              a.side.notes.size());
        CHECK(pairs.notes.size() + pairs.added_by_b.size() + pairs.notes_only_b.size() ==
              b.side.notes.size());
    }
}

TEST_CASE("pins that cross or lie outside are refused") {
    const Performed a = perform(random_score(453, 1), {});
    const auto fault = [&](std::vector<Pair> pins) {
        try {
            (void)align(a.side, a.side, {.pins = std::move(pins)});
        } catch (const Error& e) {
            return e.fault();
        }
        return Fault::internal;
    };
    CHECK(fault({{Seconds(5), Seconds(8)}, {Seconds(6), Seconds(7)}}) == Fault::bad_request);
    CHECK(fault({{Seconds(-1), Seconds(1)}}) == Fault::bad_request);
    CHECK(fault({{Seconds(1), Seconds(9999)}}) == Fault::bad_request);
}

TEST_CASE("a recording with nothing in it has no counterparts, and nothing breaks") {
    const Performed a = perform(random_score(454, 2), {});
    Side silent;
    silent.duration = Seconds(30);
    silent.f0 = Curve<Hertz>(std::size_t{3000});
    for (const Side& other : {Side{}, silent}) {
        const Alignment found = align(a.side, other);
        CHECK(found.semitones == 0);
        double sung = 0;
        for (const Stretch& s : found.stretches)
            for (const float v : a.side.f0.within(s.a()))
                sung += std::isnan(v) ? 0 : 0.01;
        CHECK(sung < 1);
        CHECK(find_counterparts(a.side, other, found).notes.empty());
        CHECK(find_counterparts(a.side, other, found).phrases.empty());
    }
    CHECK(align(Side{}, Side{}).stretches.empty());
}

TEST_CASE("aligning stops when told to") {
    const Performed a = perform(random_score(455, 1), {});
    std::stop_source stop;
    stop.request_stop();
    CHECK_THROWS_AS(align(a.side, a.side, {}, Progress({}, stop.get_token())), Stopped);
}
