// Long work, stopped at any instant: at once, cleanly, and as if it had never been begun.
#include "faults/row.h"
#include "room.h"

#include <catch2/catch.hpp>

#include <array>
#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <random>
#include <thread>

using namespace luft;
using namespace luft::stop;

namespace {

using Clock = std::chrono::steady_clock;
using std::chrono::milliseconds;

/// Far more than it takes, since machines that run tests are busy.
constexpr milliseconds kBound{5000};

Seconds passed(Clock::time_point since) {
    return Seconds(std::chrono::duration<double>(Clock::now() - since).count());
}

/// Lets the work run to its end, and returns how long that took.
milliseconds whole(Place& place, test::Row& row) {
    place.restore();
    const auto began = Clock::now();
    test::Child child = place.begin();
    const test::Outcome outcome = child.wait();
    row.must(outcome.status == 0, "It fails after it was stopped: " + outcome.err);
    place.take_as_whole();
    place.restore();
    return milliseconds(static_cast<int>(1000 * passed(began).value()));
}

/// How the program says that it was stopped; before it has come to its work, it just ends by the signal.
bool says_so(const test::Outcome& outcome, int signal) {
    return (outcome.status == 130 && outcome.err == "luftpause: Stopped.\n") ||
           (outcome.status == 128 + signal && outcome.err.empty());
}

/// proc(5): the signals that a process ignores, as a hexadecimal mask.
bool ignores(pid_t process, int signal) {
    std::ifstream status("/proc/" + std::to_string(process) + "/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with("SigIgn:"))
            return (std::stoull(line.substr(7), nullptr, 16) >> (signal - 1) & 1) != 0;
    return false;
}

} // namespace

TEST_CASE("Long work that is told to stop ends at once and leaves everything as it was") {
    const std::random_device::result_type seed = test::long_runs() ? std::random_device()() : 11;
    INFO("seed " << seed);
    std::mt19937 random(seed);
    for (const Work& work : works()) {
        INFO(work.what);
        test::Row row(
            "stop", work.what + " is stopped",
            "SIGINT, SIGTERM or SIGHUP at a random instant; must end within 5 s, say so and leave nothing");
        Waits waits(work.what);
        Place place(room(), work);
        milliseconds takes{200};
        const int runs = test::runs(2, 40);
        for (int run = 0, tries = 0; run < runs && tries < 20 * runs; ++tries) {
            const milliseconds at(
                std::uniform_int_distribution<>(0, static_cast<int>(takes.count()))(random));
            const int signal = std::array{SIGINT, SIGTERM, SIGHUP}[static_cast<std::size_t>(tries) % 3];
            INFO("signal " << signal << " after " << at.count() << " ms");
            test::Child child = place.begin();
            std::this_thread::sleep_for(at);
            child.signal(signal);
            const auto told = Clock::now();
            const auto outcome = child.wait_for(kBound);
            if (outcome && outcome->status == 0) { // it was done before
                place.restore();
                continue;
            }
            ++run;
            row.run();
            row.must(outcome.has_value(), "It went on for more than 5 s.");
            if (!outcome) break;
            if (outcome->status == 130) waits.add(passed(told));
            row.must(says_so(*outcome, signal),
                     "It ended with " + std::to_string(outcome->status) + ": " + outcome->err);
            const std::string damage = place.damage();
            row.must(damage.empty(), damage);
            if (run == 1 || !damage.empty()) takes = whole(place, row);
            place.restore();
        }
    }
}

TEST_CASE("Long work that is told twice quits on the spot, and the project is sound") {
    test::Row row("stop", "Ctrl+C is pressed twice",
                  "SIGINT twice within 30 ms while every kind of long work is on; must end within 5 s");
    std::mt19937 random(12);
    for (int round = 0; round < test::runs(1, 20); ++round)
        for (const Work& work : works()) {
            INFO(work.what);
            const Place place(room(), work);
            test::Child child = place.begin();
            std::this_thread::sleep_for(milliseconds(std::uniform_int_distribution<>(20, 200)(random)));
            child.signal(SIGINT);
            std::this_thread::sleep_for(milliseconds(std::uniform_int_distribution<>(0, 30)(random)));
            child.signal(SIGINT);
            const auto outcome = child.wait_for(kBound);
            row.must(outcome.has_value(), "It went on for more than 5 s.");
            if (!outcome || outcome->status == 0) continue; // it was done before
            row.run();
            row.must(outcome->status == 130,
                     "It ended with " + std::to_string(outcome->status) + ": " + outcome->err);
            test::Child check(LUFT_PROGRAM, {"check", place / "song.luft"});
            const test::Outcome checked = check.wait();
            row.must(checked.status == 0, checked.out + checked.err);
        }
}

TEST_CASE("Work that was begun to outlive its terminal does") {
    const Place place(room(), {"listening", {}, "heard.json"});
    // As nohup begins it, and as a shell begins what it runs in the background.
    test::Child child("sh", {"-c", "trap '' HUP INT; exec \"$@\"", "sh", LUFT_PROGRAM, "listen",
                             place / "b.wav", "--out", place / "heard.json"});
    while (!ignores(child.pid(), SIGINT))
        std::this_thread::sleep_for(milliseconds(1));
    for (int i = 0; i < 10; ++i) {
        std::this_thread::sleep_for(milliseconds(20));
        child.signal(i % 2 == 0 ? SIGHUP : SIGINT);
    }
    const test::Outcome outcome = child.wait();
    CHECK(outcome.status == 0);
    CHECK(outcome.err.empty());
    CHECK(std::filesystem::exists(place / "heard.json"));
}
