#include "profile/statistics.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace luft::profile;

TEST_CASE("Percentiles interpolate between order statistics as type 7 of Hyndman and Fan does") {
    // 1 … 10 in type 7: position 1 + 9p, so p = 0.1 gives 1.9 and p = 0.25 gives 3.25 (Hyndman & Fan 1996,
    // definition 7; the same figures come out of quantile(1:10) in R, whose default it is).
    const std::vector<double> ten{10, 9, 8, 7, 6, 5, 4, 3, 2, 1};
    CHECK(percentile(ten, 0.1).value() == Approx(1.9));
    CHECK(percentile(ten, 0.25).value() == Approx(3.25));
    CHECK(median(ten).value() == Approx(5.5));
    CHECK(percentile(ten, 1).value() == 10);
}

TEST_CASE("Nothing has no percentile, and what isn't a number doesn't count") {
    CHECK_FALSE(median({}));
    CHECK_FALSE(median({std::numeric_limits<double>::quiet_NaN()}));
    CHECK(median({std::numeric_limits<double>::infinity(), 3}).value() == 3);
}

TEST_CASE("A weighted percentile follows the weight, not the count") {
    const std::vector<Weighted> values{{60, 9}, {72, 0.5}, {74, 0.5}};
    CHECK(weighted_percentile(values, 0.5).value() == 60);
    CHECK(weighted_percentile(values, 0.93).value() == 72);
    CHECK_FALSE(weighted_percentile({{60, 0}}, 0.5));
}

TEST_CASE("A fitted line is the least-squares line") {
    // y = 1, 2, 2 over x = 0, 1, 2: slope 1/2, offset 7/6 (by hand from the normal equations).
    const auto line = fit_line({0, 1, 2}, {1, 2, 2});
    REQUIRE(line);
    CHECK(line->slope == Approx(0.5));
    CHECK(line->offset == Approx(7.0 / 6));
    CHECK_FALSE(fit_line({1, 1, 1}, {1, 2, 3}));
    CHECK_FALSE(fit_line({1}, {1}));
}
