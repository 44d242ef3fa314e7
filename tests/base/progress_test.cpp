#include "base/progress.h"

#include <catch2/catch.hpp>

#include <vector>

using namespace luft;

TEST_CASE("a part of the work reports as a part of the whole, and a part of a part likewise") {
    std::vector<double> said;
    const Progress whole([&](double done, std::string_view) { said.push_back(done); });
    whole.step(0.5, "all");
    const Progress second = whole.part(0.6, 1);
    second.step(0, "second");
    second.step(0.5, "second");
    second.part(0.5, 1).step(1, "last");
    REQUIRE(said.size() == 4);
    CHECK(said[0] == Approx(0.5));
    CHECK(said[1] == Approx(0.6));
    CHECK(said[2] == Approx(0.8));
    CHECK(said[3] == Approx(1.0));
}

TEST_CASE("work that was told to stop stops at its next step, in every part of it") {
    std::stop_source stop;
    int reports = 0;
    const Progress progress([&](double, std::string_view) { ++reports; }, stop.get_token());
    progress.step(0.1, "going");
    stop.request_stop();
    CHECK_THROWS_AS(progress.step(0.2, "going"), Stopped);
    CHECK_THROWS_AS(progress.part(0, 0.5).step(0.2, "going"), Stopped);
    CHECK(reports == 1);
}

TEST_CASE("progress that nobody asked for costs nothing and stops nothing") {
    CHECK_NOTHROW(Progress().part(0, 0.5).step(0.3, "anything"));
}
