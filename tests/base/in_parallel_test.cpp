#include "base/in_parallel.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <chrono>
#include <thread>
#include <vector>

using namespace luft;

namespace {

void pause_for(int milliseconds) {
    std::this_thread::sleep_for(std::chrono::milliseconds(milliseconds));
}

} // namespace

TEST_CASE("Works at once are taken one by one in their order, in the caller's thread") {
    for (const int jobs : {1, 3, 20}) {
        std::vector<std::size_t> taken;
        std::atomic<int> worked = 0;
        const auto here = std::this_thread::get_id();
        in_parallel(
            12, jobs, {}, "working",
            [&](std::size_t i, const Progress&) {
                pause_for(static_cast<int>(7 * i % 5)); // they end out of order
                ++worked;
            },
            [&](std::size_t i, const std::exception_ptr& fault) {
                CHECK(!fault);
                CHECK(std::this_thread::get_id() == here);
                taken.push_back(i);
            });
        CHECK(worked == 12);
        REQUIRE(taken.size() == 12);
        for (std::size_t i = 0; i < taken.size(); ++i)
            CHECK(taken[i] == i);
    }
}

TEST_CASE("No more works are begun than twice the jobs before the first one is taken") {
    std::atomic<std::size_t> begun = 0, most = 0;
    std::atomic<std::size_t> taken = 0;
    in_parallel(
        30, 2, {}, "working",
        [&](std::size_t i, const Progress&) {
            if (i == 0) pause_for(60); // the others could run far ahead of it
            ++begun;
            most = std::max(most.load(), begun - taken);
        },
        [&](std::size_t, const std::exception_ptr&) { ++taken; });
    CHECK(begun == 30);
    CHECK(most <= 4);
}

TEST_CASE("A work that throws doesn't stop the others, and its fault is handed on") {
    int well = 0, badly = 0;
    in_parallel(
        6, 3, {}, "working",
        [](std::size_t i, const Progress&) {
            if (i % 3 == 1) throw Error(Fault::unreadable, "broken");
        },
        [&](std::size_t i, const std::exception_ptr& fault) {
            CHECK((fault != nullptr) == (i % 3 == 1));
            ++(fault ? badly : well);
        });
    CHECK(well == 4);
    CHECK(badly == 2);
}

TEST_CASE("Told to stop, all works stop before the caller hears of it") {
    std::stop_source stop;
    std::atomic<int> running = 0;
    const Progress progress(
        [&](double, std::string_view) {
            if (running == 3) stop.request_stop();
        },
        stop.get_token());
    CHECK_THROWS_AS(in_parallel(
                        9, 3, progress, "working",
                        [&](std::size_t, const Progress& mine) {
                            struct Count {
                                std::atomic<int>& of;
                                explicit Count(std::atomic<int>& c) : of(c) { ++of; }
                                ~Count() { --of; }
                            } const count(running);
                            for (;;) {
                                mine.step(0.5, "on and on");
                                pause_for(1);
                            }
                        },
                        [](std::size_t, const std::exception_ptr&) { FAIL("none has ended"); }),
                    Stopped);
    CHECK(running == 0);
}

TEST_CASE("The progress of works at once goes from 0 to 1 and never back") {
    std::vector<double> told;
    in_parallel(
        4, 2, Progress([&](double done, std::string_view) { told.push_back(done); }), "working",
        [](std::size_t, const Progress& mine) {
            for (int i = 0; i <= 4; ++i) {
                mine.step(i / 4.0, "one");
                pause_for(15);
            }
        },
        [](std::size_t, const std::exception_ptr&) {});
    REQUIRE(!told.empty());
    CHECK(std::is_sorted(told.begin(), told.end()));
    CHECK(told.front() <= told.back());
    CHECK(told.back() <= 1);
    CHECK(told.back() > 0);
}
