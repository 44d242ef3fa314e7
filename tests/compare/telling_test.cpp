// Which differences are told first.
#include "compare/telling.h"

#include <catch2/catch.hpp>

#include <set>

using namespace luft;
using namespace luft::compare;

namespace {

Difference at(double second, DifferenceKind kind, double size, Unit unit, double expected,
              double confidence = 0.9) {
    const Span place{Seconds(second), Seconds(second + 0.3)};
    return {kind, place, place, size, unit, expected, {confidence}, "It differs."};
}

Difference breath(double second, double confidence = 0.9) {
    return at(second, DifferenceKind::breath_added, 1, Unit::times, 1 - confidence, confidence);
}

std::vector<std::size_t> order(const std::vector<Difference>& all, std::size_t most = 6) {
    std::vector<std::size_t> out;
    for (const Telling& t : most_telling(all, most))
        out.push_back(t.difference);
    return out;
}

} // namespace

// Two-sided normal probabilities: Abramowitz & Stegun 1964, Handbook of Mathematical Functions, table 26.1.
TEST_CASE("a probability and a size over its error stand on one scale of standard errors") {
    CHECK(beyond(at(1, DifferenceKind::onset, 1, Unit::times, 0.317311)) == Approx(1).epsilon(1e-4));
    CHECK(beyond(at(1, DifferenceKind::onset, 1, Unit::times, 0.0455003)) == Approx(2).epsilon(1e-4));
    CHECK(beyond(at(1, DifferenceKind::onset, 1, Unit::times, 0.00269980)) == Approx(3).epsilon(1e-4));
    CHECK(beyond(at(1, DifferenceKind::onset, 1, Unit::times, 1)) == Approx(0).margin(1e-4));
    CHECK(beyond(at(1, DifferenceKind::note_intonation, -8, Unit::cents, 2)) == Approx(4));
    CHECK(beyond(at(1, DifferenceKind::note_intonation, 400, Unit::cents, 2)) == 6);
    CHECK(beyond(at(1, DifferenceKind::note_intonation, 400, Unit::cents, 0)) == 6);
    CHECK(beyond(at(1, DifferenceKind::breath_saved, -1, Unit::times, 0)) == 6);
}

TEST_CASE("what is further beyond the error comes first, and what is surer of two that are as far") {
    CHECK(order({at(1, DifferenceKind::note_level, 9, Unit::decibels, 3),
                 at(5, DifferenceKind::note_intonation, 20, Unit::cents, 4),
                 at(9, DifferenceKind::vibrato_rate, 0.5, Unit::hertz, 0.1, 0.95)}) ==
          std::vector<std::size_t>{2, 1, 0});
}

TEST_CASE("of ten breaths the surest are told, and each other matter that differs before a second breath") {
    std::vector<Difference> all;
    for (int i = 0; i < 10; ++i)
        all.push_back(breath(5 * i, 0.9999));
    all.push_back(at(51, DifferenceKind::note_intonation, 16, Unit::cents, 5, 0.75));
    all.push_back(at(52, DifferenceKind::level_shape, 6, Unit::decibels, 2, 0.8));
    all.push_back(at(53, DifferenceKind::added_notes, 3, Unit::times, 0.002, 0.8));
    const auto told = order(all);
    CHECK(told.size() == 6);
    CHECK(told.front() == 0);
    const std::set<std::size_t> first(told.begin(), told.begin() + 4);
    CHECK(first == std::set<std::size_t>{0, 10, 11, 12});
}

TEST_CASE("a breath that the ear is less sure of is told before a second note out of tune") {
    CHECK(order({at(1, DifferenceKind::note_intonation, 40, Unit::cents, 5),
                 at(5, DifferenceKind::note_intonation, 30, Unit::cents, 5), breath(9, 0.92)}) ==
          std::vector<std::size_t>{0, 2, 1});
}

TEST_CASE("a breath saved where a phrase is joined is one thing to say, elsewhere it is two") {
    const std::vector<Difference> here = {
        at(11.1, DifferenceKind::phrase_joined, 1, Unit::times, 0, 1),
        at(11.3, DifferenceKind::breath_saved, -1, Unit::times, 0.01, 0.99)};
    const auto told = most_telling(here);
    REQUIRE(told.size() == 1);
    CHECK(told[0].difference == 0);
    CHECK(told[0].likewise == std::vector<std::size_t>{1});
    auto apart = here;
    apart[1].a = Span{Seconds(20), Seconds(20.3)};
    CHECK(most_telling(apart).size() == 2);
    auto other = here;
    other[1].kind = DifferenceKind::note_intonation;
    CHECK(most_telling(other).size() == 2);
}

TEST_CASE("key, tuning and tempo of the whole aren't told again, a phrase's tempo and the range are") {
    const auto whole = [](DifferenceKind kind) {
        return Difference{kind, {}, {}, 12, Unit::percent, 1, {0.99}, "It differs."};
    };
    CHECK(order({whole(DifferenceKind::key), whole(DifferenceKind::tuning), whole(DifferenceKind::tempo),
                 at(3, DifferenceKind::phrase_tempo, 12, Unit::percent, 2),
                 whole(DifferenceKind::highest_note), whole(DifferenceKind::lowest_note)}) ==
          std::vector<std::size_t>{4, 3, 5});
    CHECK(most_telling({}).empty());
    CHECK(most_telling({breath(1), breath(9), breath(20)}, 2).size() == 2);
}
