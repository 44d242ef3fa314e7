#include "signal/statistics.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace luft::signal;

namespace {
constexpr float kNone = std::numeric_limits<float>::quiet_NaN();
}

TEST_CASE("quantiles are those of Hyndman and Fan's definition 7, over numbers only") {
    const std::vector<float> x{4, kNone, 1, 3, 2};
    // With definition 7 the p-quantile of n values lies at 1 + (n - 1) p in their order.
    CHECK(*quantile(x, 0.5) == Approx(2.5));
    CHECK(*quantile(x, 0.25) == Approx(1.75));
    CHECK(*quantile(x, 0) == Approx(1));
    CHECK(*quantile(x, 1) == Approx(4));
    CHECK(*quantile(x, 0.9) == Approx(3.7));
    CHECK(*median(std::vector<double>{7}) == Approx(7));
    CHECK_FALSE(median(std::vector<float>{}));
    CHECK_FALSE(median(std::vector<float>{kNone, kNone}));
    CHECK(*mean(x) == Approx(2.5));
    CHECK_FALSE(mean(std::vector<float>{kNone}));
}

TEST_CASE("a line by least squares goes through the example worked out by hand") {
    // (0,1), (1,3), (2,2), (3,5): slope 1.1, intercept 1.1.
    const auto line = fit_line(std::vector<float>{1, 3, 2, 5});
    REQUIRE(line);
    CHECK(line->slope == Approx(1.1));
    CHECK(line->intercept == Approx(1.1));
    // Holes don't move it.
    const auto with_holes = fit_line(std::vector<float>{1, kNone, 5, kNone, 9});
    REQUIRE(with_holes);
    CHECK(with_holes->slope == Approx(2));
    CHECK(with_holes->intercept == Approx(1));
    CHECK_FALSE(fit_line(std::vector<float>{1, kNone}));
}

TEST_CASE("a running median takes out a single outlier and keeps holes") {
    const auto y = running_median(std::vector<float>{1, 1, 9, 1, kNone, 2}, 1);
    CHECK(y[2] == 1);
    CHECK(std::isnan(y[4]));
    CHECK(y.size() == 6);
}

TEST_CASE("a running mean leaves a slope as it is, up to its ends") {
    std::vector<float> slope{kNone};
    for (int i = 0; i < 20; ++i)
        slope.push_back(static_cast<float>(3 * i));
    const auto y = running_mean(slope, 4);
    CHECK(std::isnan(y[0]));
    for (std::size_t i = 1; i < y.size(); ++i)
        CHECK(y[i] == Approx(slope[i]).margin(1e-4));
    const auto hill = running_mean(std::vector<float>{0, 0, 3, 0, 0}, 1);
    CHECK(hill[1] == Approx(1));
    CHECK(hill[2] == Approx(1));
    CHECK(hill[0] == Approx(0));
}

TEST_CASE("the logistic function is a half at 0 and falls short of 0 and 1") {
    CHECK(logistic(0) == Approx(0.5));
    CHECK(logistic(std::log(3.0)) == Approx(0.75)); // odds of three to one
    CHECK(logistic(-2) == Approx(1 - logistic(2)));
}
