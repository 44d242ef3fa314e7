#include "base/side_thread.h"

#include <catch2/catch.hpp>

#include <stdexcept>
#include <vector>

using namespace luft;

TEST_CASE("tasks beside run all, in order") {
    std::vector<int> done;
    SideThread side;
    for (int i = 0; i < 1000; ++i)
        side.run([&done, i] { done.push_back(i); });
    side.finish();
    REQUIRE(done.size() == 1000);
    for (int i = 0; i < 1000; ++i)
        CHECK(done[static_cast<std::size_t>(i)] == i);
}

TEST_CASE("what a task beside throws comes out, and ends the work") {
    bool later = false;
    SideThread side;
    side.run([] { throw std::runtime_error("no room"); });
    CHECK_THROWS_WITH(side.finish(), "no room");
    CHECK_THROWS_WITH(side.run([&] { later = true; }), "no room");
    CHECK_FALSE(later);
}

TEST_CASE("a side thread ends while tasks wait") {
    int done = 0;
    {
        SideThread side;
        for (int i = 0; i < 50; ++i)
            side.run([&] { ++done; });
    }
    CHECK(done <= 50);
}
