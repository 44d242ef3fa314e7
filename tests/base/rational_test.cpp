#include "base/error.h"
#include "base/rational.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace luft;

namespace {
constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();

Fault fault_of(const std::function<void()>& work) {
    try {
        work();
    } catch (const Error& e) {
        CHECK_FALSE(std::string(e.what()).empty());
        return e.fault();
    }
    FAIL("nothing was thrown");
    return Fault::internal;
}
} // namespace

TEST_CASE("a fraction is kept in lowest terms with the sign above the line") {
    CHECK(Rational(6, 4) == Rational(3, 2));
    CHECK(Rational(3, -6) == Rational(-1, 2));
    CHECK(Rational(-3, -6) == Rational(1, 2));
    CHECK(Rational(0, -7) == Rational(0));
    CHECK(Rational(3, -6).den() == 2);
    CHECK(Rational(0, -7).den() == 1);
}

TEST_CASE("thirds and frame lengths add up exactly, where doubles don't") {
    Rational sum;
    double drifting = 0;
    const Rational frame(1001, 30000); // one frame at 29.97 a second
    for (int i = 0; i < 30000; ++i) {
        sum += frame;
        drifting += 1001.0 / 30000.0;
    }
    CHECK(sum == Rational(1001));
    CHECK(drifting != 1001.0);
    CHECK(Rational(1, 3) + Rational(1, 3) + Rational(1, 3) == Rational(1));
    CHECK(Rational(7, 12) - Rational(1, 4) == Rational(1, 3));
    CHECK(Rational(-2, 3) * Rational(9, 4) == Rational(-3, 2));
    CHECK(Rational(2, 3) / Rational(-4, 9) == Rational(-3, 2));
}

TEST_CASE("an hour of drop-frame time is 107892 frames of 1001/30000 s, 3.6 ms short of an hour") {
    // SMPTE ST 12-1: 108000 names less 108 dropped ones; 3599.9964 s.
    const Rational hour = Rational(107892) * Rational(1001, 30000);
    CHECK(Rational(3600) - hour == Rational(36, 10000));
}

TEST_CASE("floor, ceil and round of negative fractions go the right way, halves up") {
    struct Row {
        Rational x;
        std::int64_t floor, ceil, round;
    };
    for (const Row& row : {Row{{7, 2}, 3, 4, 4},
                           {{-7, 2}, -4, -3, -3},
                           {{-1, 2}, -1, 0, 0},
                           {{1, 2}, 0, 1, 1},
                           {{-1, 3}, -1, 0, 0},
                           {{-2, 3}, -1, 0, -1},
                           {{2, 3}, 0, 1, 1},
                           {{-4}, -4, -4, -4},
                           {{4}, 4, 4, 4}}) {
        CAPTURE(row.x.num(), row.x.den());
        CHECK(row.x.floor() == row.floor);
        CHECK(row.x.ceil() == row.ceil);
        CHECK(row.x.round() == row.round);
    }
}

TEST_CASE("fractions are ordered by value, also where cross products don't fit 64 bits") {
    CHECK(Rational(1, 3) < Rational(1, 2));
    CHECK(Rational(-1, 2) < Rational(-1, 3));
    CHECK(Rational(kMost, kMost - 1) > Rational(kMost - 1, kMost));
    CHECK(Rational(kMost - 1, kMost) < Rational(1));
    CHECK(Rational(2, 4) <= Rational(1, 2));
}

TEST_CASE("a result that doesn't fit is an error, never a wrapped number") {
    const Rational most(kMost);
    CHECK(fault_of([&] { (void)(most + Rational(1)); }) == Fault::internal);
    CHECK(fault_of([&] { (void)(-most - Rational(2)); }) == Fault::internal);
    CHECK(fault_of([&] { (void)(most * Rational(2)); }) == Fault::internal);
    CHECK(fault_of([&] { (void)(Rational(1, kMost) * Rational(1, 2)); }) == Fault::internal);
    CHECK(most + Rational(0) == most);
    // The way there may be long as long as the result fits.
    CHECK(Rational(kMost, 3) * Rational(3, kMost) == Rational(1));
}

TEST_CASE("nothing is divided by nothing") {
    CHECK(fault_of([] { (void)Rational(1, 0); }) == Fault::bad_request);
    CHECK(fault_of([] { (void)(Rational(1) / Rational(0)); }) == Fault::bad_request);
}

TEST_CASE("a number of seconds becomes the nearest fraction of a given denominator") {
    CHECK(nearest_rational(0.1, 1000) == Rational(1, 10));
    CHECK(nearest_rational(-1.2344, 1000) == Rational(-1234, 1000));
    CHECK(nearest_rational(1.0 / 3, 90000) == Rational(1, 3));
}
