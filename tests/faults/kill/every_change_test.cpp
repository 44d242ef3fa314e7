// Each call of the program that changes a file, one after the other: killed there, or refused by the system.
#include "judge.h"

#include <cerrno>
#include <random>

using namespace faults;

namespace {

/// As many calls as asked for, spread over all.
std::vector<long> places(const Undisturbed& work, int most) {
    std::vector<long> all;
    const auto last = static_cast<long>(work.calls().size());
    const long stride = std::max(1L, last / std::max(most, 1));
    for (long at = last - stride / 3; at >= 1 && all.size() < static_cast<std::size_t>(most); at -= stride)
        all.push_back(at);
    return all;
}

constexpr int kAll = 1'000'000;
constexpr int kMany = 60; ///< of a work that takes seconds
constexpr const char* kHow =
    "the program is killed (SIGKILL) right before one of its calls that change a file, or when that "
    "has written half (LD_PRELOAD); one call after the other, of listening and writing all files 60 spread "
    "over all";

void kill_at_every_change(const Work& work) {
    Row row("kill", "killed at each change of a file: " + work.name, kHow);
    const Undisturbed& whole = undisturbed(work);
    for (const long at : places(whole, runs(work.is_long ? 1 : 3, work.is_long ? kMany : kAll))) {
        whole.disturb({.at = at, .kill = true}, row);
        if (whole.calls()[static_cast<std::size_t>(at) - 1].starts_with("write"))
            whole.disturb({.at = at, .kill = true, .half = true}, row);
    }
}

/// `failing` at each call of every work.
void fail_everywhere(Row& row, Failing failing, int brief) {
    for (const Work& work : all_works()) {
        if (work.is_long && !luft::test::long_runs()) continue;
        const Undisturbed& whole = undisturbed(work);
        for (const long at : places(whole, runs(brief, work.is_long ? kMany : kAll))) {
            failing.at = at;
            whole.disturb(failing, row);
        }
    }
}

} // namespace

TEST_CASE("killed at any change of a file while making a project") {
    kill_at_every_change(making_a_project());
}
TEST_CASE("killed at any change of a file while adding a linked recording") {
    kill_at_every_change(adding(false));
}
TEST_CASE("killed at any change of a file while adding a carried recording") {
    kill_at_every_change(adding(true));
}
TEST_CASE("killed at any change of a file while adding and listening") {
    kill_at_every_change(adding_and_listening());
}
TEST_CASE("killed at any change of a file while listening again") {
    kill_at_every_change(listening());
}
TEST_CASE("killed at any change of a file while editing the words") {
    kill_at_every_change(editing_words());
}
TEST_CASE("killed at any change of a file while adding a moment") {
    kill_at_every_change(editing_a_moment());
}
TEST_CASE("killed at any change of a file while drafting the script") {
    kill_at_every_change(drafting());
}
TEST_CASE("killed at any change of a file while undoing") {
    kill_at_every_change(undoing());
}
TEST_CASE("killed at any change of a file while doing again") {
    kill_at_every_change(redoing());
}
TEST_CASE("killed at any change of a file while migrating") {
    kill_at_every_change(migrating());
}
TEST_CASE("killed at any change of a file while rescuing") {
    kill_at_every_change(rescuing());
}
TEST_CASE("killed at any change of a file while rolling back what a kill has cut off") {
    kill_at_every_change(rolling_back());
}
TEST_CASE("killed at any change of a file while writing all files") {
    kill_at_every_change(exporting());
}

TEST_CASE("killed at a random instant of any kind of work") {
    Row row("kill",
            "killed at a random instant, in 14 kinds of work: making, adding, listening, editing, undoing, "
            "migrating, "
            "rescuing, writing all files …",
            "SIGKILL to luftpause after a random part of the time that the work takes");
    std::mt19937 chance(31);
    std::uniform_real_distribution<double> share(0, 1);
    for (const Work& work : all_works())
        for (int n = runs(work.is_long ? 0 : 1, 40); n > 0; --n)
            undisturbed(work).kill_at(share(chance), row);
}

TEST_CASE("the disk is full from any change of a file on") {
    Row row("disk", "the disk is full from any change of a file on, in 14 kinds of work",
            "all calls that need room fail (ENOSPC) from one of them on, which writes half; one after the "
            "other (LD_PRELOAD)");
    fail_everywhere(row, {.error = ENOSPC, .on = true, .half = true}, 2);
}

TEST_CASE("the quota is used up at any change of a file") {
    Row row("disk", "the quota is used up at any change of a file, in 14 kinds of work",
            "one call that changes a file fails (EDQUOT), those after it don't; one after the other "
            "(LD_PRELOAD)");
    fail_everywhere(row, {.error = EDQUOT}, 2);
}

TEST_CASE("a change of a file fails, any one") {
    Row row("disk", "the disk refuses one change of a file, any one, in 14 kinds of work",
            "one call that changes a file fails (EIO), removing included; one after the other (LD_PRELOAD)");
    fail_everywhere(row, {.error = EIO}, 2);
}
