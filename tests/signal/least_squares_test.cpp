#include "signal/least_squares.h"

#include <catch2/catch.hpp>

using namespace luft::signal;

TEST_CASE("a regression gives back the coefficients that the observations were made with") {
    LeastSquares fit(3);
    for (const double x : {-2.0, -1.0, 0.0, 1.0, 3.0})
        for (const double y : {0.5, 1.0, 4.0})
            fit.add({1, x, y}, 2 - 3 * x + 0.5 * y, 1);
    const auto c = fit.solve(0);
    REQUIRE(c.size() == 3);
    CHECK(c[0] == Approx(2));
    CHECK(c[1] == Approx(-3));
    CHECK(c[2] == Approx(0.5));
}

TEST_CASE("weights count observations, and a coefficient that nothing speaks of is 0") {
    LeastSquares fit(2);
    fit.add({1, 0}, 4, 3); // as if it had been seen three times
    fit.add({1, 0}, 8, 1);
    const auto c = fit.solve(1e-9);
    CHECK(c[0] == Approx(5));
    CHECK(c[1] == Approx(0).margin(1e-6));
}
