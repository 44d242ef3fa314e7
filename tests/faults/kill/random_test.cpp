// The real program killed at any instant, one command after the other on one project, as a coach would use it
// whose machine keeps failing.
#include "faults/row.h"
#include "work.h"

#include <chrono>
#include <csignal>
#include <thread>

using namespace faults;
using luft::test::Row;
using luft::test::runs;

namespace {

struct Chance {
    std::uint32_t seed;
    std::uint32_t below(std::uint32_t bound) {
        seed = seed * 1664525 + 1013904223;
        return (seed >> 8) % bound;
    }
};

/// How the journal and the coach's tables are, by what isn't undone.
struct State {
    std::vector<std::string> edits; ///< oldest first
    std::string contents;
};

State state_of(const Project& project) {
    State state;
    for (const JournalEntry& entry : project.journal(10'000))
        if (!entry.undone) state.edits.insert(state.edits.begin(), entry.label + " " + entry.when);
    state.contents = contents(project.file(), false);
    return state;
}

struct Turn {
    std::vector<std::string> arguments;
    std::uint32_t milliseconds; ///< most that it is given
};

Turn turn(Chance& chance, int run) {
    const std::string n = std::to_string(run);
    switch (chance.below(8)) {
    case 0:
        return {{"add", "@/song.luft", "@/b.wav", "--label", "B" + n, "--no-listen"}, 60};
    case 1:
        return {{"add", "@/song.luft", "@/b.wav", "--label", "B" + n, "--no-listen", "--carry"}, 80};
    case 2:
        return {{"listen", "@/song.luft", "--performance", "A"}, 700};
    case 3:
        return {{"piece", "@/song.luft", "--title", "Edit " + n}, 50};
    case 4:
        return {{"mark", "@/song.luft", "add", "--kind", "breath", "--from", n, "--to", n + ".5",
                 "--performance", "A"},
                50};
    case 5:
        return {{"undo", "@/song.luft", "--steps", "2"}, 60};
    case 6:
        return {{"redo", "@/song.luft", "--steps", "2"}, 60};
    default:
        return {{"moment", "@/song.luft", "add", "--from", "1", "--to", "2", "--remark", "Edit " + n,
                 "--performance", "A"},
                60};
    }
}

/// The longest beginning that both have in common.
std::size_t in_common(const std::vector<std::string>& a, const std::vector<std::string>& b) {
    return static_cast<std::size_t>(std::ranges::mismatch(a, b).in1 - a.begin());
}

} // namespace

TEST_CASE("killed at any instant, the program leaves every edit of before in the project") {
    Row row(
        "kill",
        "killed at any instant: adding, listening, editing, undo, redo, one after the other on one project",
        "SIGKILL to luftpause after a random time; the next command goes on with what is left");
    const Room room([] {
        static const Folder furnished;
        editing_words().furnish(furnished.path());
        return furnished.path();
    }());
    const fs::path file = room / "song.luft";
    Chance chance{23};
    int killed = 0;
    State before = state_of(Project::open(file, Access::read));
    for (int run = 0, wanted = runs(12, 600); run < wanted; ++run) {
        const Turn now = turn(chance, run);
        Child child(LUFT_PROGRAM, in(room.folder.path(), now.arguments));
        std::optional<Outcome> ended =
            child.wait_for(std::chrono::milliseconds(1 + chance.below(now.milliseconds)));
        if (!ended) {
            child.signal(SIGKILL);
            ended = child.wait();
            row.run();
            ++killed;
        }
        INFO("run " << run << ": " << now.arguments[0] << ", status " << ended->status << " " << ended->err);
        const Outcome check = Child(LUFT_PROGRAM, {"check", file.string()}).wait();
        row.must(check.status == 0, "check: " + check.out + check.err);
        Project project = Project::open(file);
        const State after = state_of(project);
        const bool back = now.arguments[0] == "undo";
        // Nothing of before may be missing, but what undo was told to take back.
        const State& longer = back ? before : after;
        const State& shorter = back ? after : before;
        row.must(in_common(longer.edits, shorter.edits) == shorter.edits.size(),
                 "an edit of before is missing");
        row.must(longer.edits.size() - shorter.edits.size() <= 4, "more was done than one command does");
        if (ended->status == 0 && now.arguments[0] != "redo" && !back && now.arguments[0] != "listen")
            row.must(after.edits.size() == before.edits.size() + 1, "done as it said, and it isn't there");
        // What has come on top can be taken back and done again, to the bit.
        if (!back) {
            std::size_t undone = 0;
            for (std::size_t n = after.edits.size(); n > before.edits.size(); --n, ++undone)
                row.must(project.undo().has_value(), "it can't be undone");
            row.must(state_of(project).contents == before.contents, "undone, the project isn't as before");
            for (; undone > 0; --undone)
                row.must(project.redo().has_value(), "it can't be done again");
            row.must(state_of(project).contents == after.contents, "done again, the project isn't the same");
        }
        before = after;
    }
    CHECK(killed > runs(12, 600) / 4); // else nothing was tried
}
