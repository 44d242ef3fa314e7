#include "base/curve.h"

#include <catch2/catch.hpp>

using namespace luft;

TEST_CASE("a missing value of a curve is none, not 0, inside it and outside") {
    Curve<Hertz> curve(3);
    curve.set(1, Hertz(220));
    curve.push(std::nullopt);
    curve.push(Hertz(0));
    REQUIRE(curve.size() == 5);
    CHECK_FALSE(curve.at(FrameIndex{0}));
    CHECK(curve.at(FrameIndex{1}) == Hertz(220));
    CHECK_FALSE(curve.at(FrameIndex{3}));
    CHECK(curve.at(FrameIndex{4}) == Hertz(0)); // 0 is a value
    CHECK_FALSE(curve.at(FrameIndex{-1}));
    CHECK_FALSE(curve.at(FrameIndex{5}));
    curve.set(1, std::nullopt);
    CHECK_FALSE(curve.at(FrameIndex{1}));
    CHECK(Curve<Hertz>().empty());
}

TEST_CASE("a curve is asked by time for the frame nearest to it") {
    Curve<Share> curve(std::vector<float>{0.F, 0.1F, 0.2F});
    CHECK(curve.at(Seconds(0.0149))->value() == Approx(0.1));
    CHECK(curve.at(Seconds(0.0151))->value() == Approx(0.2));
    CHECK_FALSE(curve.at(Seconds(0.026)));
    CHECK_FALSE(curve.at(Seconds(-0.006)));
}

TEST_CASE("within a span are the frames whose centres it holds: its start counts, its end doesn't") {
    std::vector<float> values;
    for (int i = 0; i < 100; ++i)
        values.push_back(static_cast<float>(i));
    const Curve<Decibels> curve(values);
    const auto first_and_count = [&](double from, double to) {
        const auto part = curve.within({Seconds(from), Seconds(to)});
        return std::pair(part.empty() ? -1 : static_cast<int>(part[0]), part.size());
    };
    CHECK(first_and_count(0.1, 0.2) == std::pair(10, std::size_t{10}));
    CHECK(first_and_count(0.101, 0.2) == std::pair(11, std::size_t{9}));
    CHECK(first_and_count(0.1, 0.201) == std::pair(10, std::size_t{11}));
    CHECK(first_and_count(0.3, 0.6) == std::pair(30, std::size_t{30})); // 0.3 / 0.01 isn't 30 in doubles
    CHECK(first_and_count(-5, 0.05) == std::pair(0, std::size_t{5}));
    CHECK(first_and_count(0.95, 50) == std::pair(95, std::size_t{5}));
    CHECK(first_and_count(0.5, 0.5).second == 0);
    CHECK(first_and_count(0.6, 0.5).second == 0);
    CHECK(first_and_count(7, 8).second == 0);
}
