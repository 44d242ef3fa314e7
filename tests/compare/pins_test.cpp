// What the coach pins, what can't be aligned, and stopping.
#include "compare/material.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::compare;
using namespace luft::compare::test;

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
