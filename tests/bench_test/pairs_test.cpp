// The benchmark of aligning itself: its warps go where they say, and its figures are right for a known error.
#include "bench/pairs/meet.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::bench;

TEST_CASE("a steady map divides times by the speed, a leaning one comes out at the mean of 1 / speed") {
    const TimeMap twice = steady(Seconds(20), 2);
    CHECK(twice(Seconds(7.1)).value() == Approx(3.55));
    // From 1 to 2 over 10 s: the integral of 10 ds / (10 s) from 1 to 2 is 10 ln 2.
    CHECK(leaning(Seconds(10), 1, 2)(Seconds(10)).value() == Approx(10 * std::log(2.0)).epsilon(1e-3));
}

TEST_CASE("clicks warped by the library come out within 30 ms of the map") {
    // Measured: 1 to 28 ms, the most where the speed changes.
    for (const TimeMap& map : {steady(Seconds(8), 0.7), rubato(Seconds(8), 0.3, 1)})
        CHECK(map_error(map, 0) < Seconds(0.03));
}

TEST_CASE("a singing warped twice as slow has its notes at twice their times") {
    const Tune tune = tune_for(1000, 45, 62);
    const Singing sung = sung_by_us(tune, singer::VoiceType::tenor, 1);
    REQUIRE(sung.notes.size() == tune.notes.size());
    for (std::size_t i = 0; i < sung.notes.size(); ++i)
        CHECK(std::abs((sung.notes[i].start - tune.notes[i].span.start).value()) < 0.05);
    const Singing slow = warped(sung, steady(sung.length(), 0.5), 0);
    CHECK(slow.length() / sung.length() == Approx(2).epsilon(0.01));
    CHECK(slow.notes[5].start.value() == Approx(2 * sung.notes[5].start.value()));
}

TEST_CASE("a performance meets itself without error, and by its shift where the truth is shifted") {
    using namespace compare::test;
    Heard a;
    a.said = perform(random_score(3000, 2), {.unsure = Seconds(0)});
    Meeting same;
    same.add(a, a);
    CHECK(same.notes > 40);
    CHECK(same.lost == 0);
    CHECK(same.wrong_keys == 0);
    CHECK(same.most().value() < 1);
    Heard shifted = a;
    for (PlacedNote& n : shifted.said.notes)
        n.span = {n.span.start + Seconds(0.08), n.span.end + Seconds(0.08)};
    Meeting off;
    off.add(a, shifted);
    CHECK(off.median().value() == Approx(80).margin(1));
    CHECK(off.mean().value() == Approx(80).margin(3));
}
