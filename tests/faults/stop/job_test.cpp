// The desk's long work, stopped by its button or by closing the window.
#include "desk/work/job.h"
#include "faults/row.h"
#include "room.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <random>
#include <thread>

using namespace luft;
using namespace luft::desk;
using namespace luft::stop;

namespace {

using Clock = std::chrono::steady_clock;
using std::chrono::milliseconds;

constexpr Seconds kBound{5}; // as for the command line

struct Kind {
    const char* what;
    std::function<Job::Task(const Place&)> task;
};

intake::Recording recording(const Place& place, bool carry) {
    intake::Recording one;
    one.media = place / "b.wav";
    one.details.label = "C";
    one.carry = carry;
    return one;
}

std::set<std::string, std::less<>> every_format() {
    std::set<std::string, std::less<>> keys;
    for (const files::Format& format : files::formats())
        keys.emplace(format.key);
    return keys;
}

const std::vector<Kind>& kinds() {
    static constexpr project::PerformanceId kA{1}, kB{2};
    static const std::vector<Kind> all{
        {"adding, linked", [](const Place& place) { return recording(place, false); }},
        {"adding, carried", [](const Place& place) { return recording(place, true); }},
        {"listening again", [](const Place&) { return Job::Again{kA}; }},
        {"writing files",
         [](const Place& place) {
             return Job::Files{kA, place / "out", every_format()};
         }},
        {"comparing",
         [](const Place&) {
             return Job::Match{kA, kB};
         }},
    };
    return all;
}

void wait_for(const Job& job) {
    while (!job.state().finished)
        std::this_thread::sleep_for(milliseconds(1));
}

Seconds passed(Clock::time_point since) {
    return Seconds(std::chrono::duration<double>(Clock::now() - since).count());
}

bool came_to_nothing(const Job::Outcome& outcome) {
    return !outcome.added && !outcome.written && !outcome.matched && !outcome.fault;
}

} // namespace

TEST_CASE("The desk's long work that is told to stop ends at once and leaves everything as it was") {
    test::Row row(
        "stop", "The desk's long work is stopped",
        "its stop button, at a random instant of listening, comparing and writing; must end within 5 s");
    std::mt19937 random(21);
    for (const Kind& kind : kinds()) {
        INFO(kind.what);
        Waits waits(std::string("The desk, ") + kind.what);
        Place place(room(), {kind.what, {}, "out"});
        int takes = 150; // ms
        const int runs = test::runs(2, 60);
        for (int run = 0, tries = 0; run < runs && tries < 20 * runs; ++tries) {
            const milliseconds at(std::uniform_int_distribution<>(0, takes)(random));
            INFO("after " << at.count() << " ms");
            Job job(place / "song.luft", kind.task(place));
            std::this_thread::sleep_for(at);
            job.stop();
            const auto told = Clock::now();
            wait_for(job);
            const Seconds waited = passed(told);
            if (!came_to_nothing(job.outcome()) && !job.outcome().fault) { // it was done before
                place.restore();
                continue;
            }
            ++run;
            row.run();
            waits.add(waited);
            row.must(waited < kBound, "It went on for more than 5 s.");
            row.must(!job.outcome().fault, job.outcome().fault ? job.outcome().fault->what() : "");
            const std::string damage = place.damage();
            row.must(damage.empty(), damage);
            if (run == 1) {
                place.restore();
                const auto began = Clock::now();
                Job whole(place / "song.luft", kind.task(place));
                wait_for(whole);
                takes = static_cast<int>(1000 * passed(began).value());
                row.must(!came_to_nothing(whole.outcome()) && !whole.outcome().fault,
                         "It fails after it was stopped.");
                place.take_as_whole();
            }
            place.restore();
        }
    }
}

TEST_CASE("The window is closed while work is on: what was edited beside it is there") {
    test::Row row("stop", "The window is closed while it works",
                  "its work is let go at a random instant, right after an edit; the edit must be there");
    std::mt19937 random(22);
    for (int round = 0; round < test::runs(1, 40); ++round)
        for (const Kind& kind : kinds()) {
            INFO(kind.what);
            const Place place(room(), {kind.what, {}, "out"});
            const std::string words = "Edited in round " + std::to_string(round);
            auto began = Clock::now();
            {
                project::Project window = project::Project::open(place / "song.luft");
                const Job job(place / "song.luft", kind.task(place));
                std::this_thread::sleep_for(milliseconds(std::uniform_int_distribution<>(0, 300)(random)));
                project::Piece piece = window.piece();
                piece.writer = words;
                window.set_piece(piece);
                began = Clock::now();
            }
            row.run();
            row.must(passed(began) < kBound, "It went on for more than 5 s.");
            const project::Project again = project::Project::open(place / "song.luft");
            row.must(again.piece().writer == words, "The edit is gone.");
            row.must(again.check().empty(), "The project is damaged.");
            for (const std::string& name : place.left_behind())
                row.lost("'" + name + "' was left behind.");
        }
}
