// Several programs on one project: all edits there, none waits for ever.
#include "faults/row.h"
#include "project/compare.h"
#include "project/database.h"
#include "tools/child.h"

#include <sys/wait.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <set>
#include <thread>

using namespace desk;
using luft::test::Row;
using luft::test::runs;

namespace {

constexpr int kEditors = 4;
constexpr std::chrono::seconds kLongest{120};

/// Adds moments of its own. Busy isn't a loss: it says so, and tries again.
[[noreturn]] void edit_alone(const fs::path& file, int who, int edits) {
    try {
        Project p = Project::open(file);
        for (int n = 0; n < edits;) {
            Moment m;
            m.performance = p.performance("A").id;
            m.span = span(n, n + 1);
            m.remark = std::to_string(who) + " " + std::to_string(n);
            try {
                p.add_moment(m);
                ++n;
            } catch (const Error& error) {
                if (error.fault() != Fault::busy) throw;
            }
        }
        _exit(0);
    } catch (...) {
        _exit(2);
    }
}

void close(Project& project) {
    const Project closed = std::move(project);
}

/// Waits for all; false when one of them had to be ended.
bool all_ended(const std::vector<pid_t>& children) {
    const auto until = std::chrono::steady_clock::now() + kLongest;
    bool fine = true;
    for (const pid_t child : children) {
        int status = 0;
        while (waitpid(child, &status, WNOHANG) == 0) {
            if (std::chrono::steady_clock::now() > until) ::kill(child, SIGKILL);
            std::this_thread::sleep_for(std::chrono::milliseconds(2));
        }
        fine = fine && WIFEXITED(status) && WEXITSTATUS(status) == 0;
    }
    return fine;
}

std::multiset<std::string> remarks(const Project& project, PerformanceId a) {
    std::multiset<std::string> all;
    for (const Moment& moment : project.moments(a))
        all.insert(moment.remark);
    return all;
}

} // namespace

TEST_CASE("many processes edit one project at once: each edit is there once, and reading never tears") {
    Row row(
        "two programs", "four programs edit one project at once while a fifth one reads it",
        "processes that add moments without a pause; a reader looks at all of it meanwhile; runs = edits");
    Sample s;
    close(s.project);
    const int edits = runs(15, 150);
    std::vector<pid_t> editors;
    for (int who = 0; who < kEditors; ++who) {
        const pid_t child = fork();
        REQUIRE(child >= 0);
        if (child == 0) edit_alone(s.file, who, edits);
        editors.push_back(child);
    }
    // As the desk does it: open all the time, rereading.
    Project reader = Project::open(s.file, Access::read);
    std::size_t seen = 0;
    bool working = true;
    bool ended_well = false;
    std::jthread waiter([&] { ended_well = all_ended(editors); });
    for (; working; std::this_thread::sleep_for(std::chrono::milliseconds(5))) {
        working = std::ranges::any_of(editors, [](pid_t editor) { return ::kill(editor, 0) == 0; });
        try {
            const std::size_t now = reader.moments(s.a).size();
            row.must(now >= seen, "the reader saw fewer than before");
            seen = now;
        } catch (const Error& error) {
            row.must(error.fault() == Fault::busy, std::string("the reader: ") + error.what());
        }
    }
    waiter.join();
    row.must(ended_well, "a program ended otherwise than it must, or hung");
    row.runs(kEditors * edits);
    s.reopen();
    const auto all = remarks(s.project, s.a);
    for (int who = 0; who < kEditors; ++who)
        for (int n = 0; n < edits; ++n)
            row.must(all.count(std::to_string(who) + " " + std::to_string(n)) == 1,
                     "an edit is lost, or there twice");
    row.must(s.project.journal(100'000).size() == all.size() + 1, "the journal has another number of edits");
    row.must(s.project.check().empty(), "the project isn't sound");
    std::size_t undone = 0;
    while (s.project.undo())
        ++undone;
    row.must(undone == all.size() + 1, "not each edit could be undone");
}

TEST_CASE(
    "the command line edits a project that is open in another program, and undo takes back the newest edit") {
    Row row("two programs",
            "the command line edits, undoes and redoes in a project that another program has open",
            "luftpause and an open project take turns; undo takes back the newest edit, whoever made it");
    Sample s;
    const int wanted = runs(3, 100);
    for (int run = 0; run < wanted; ++run) {
        row.run();
        INFO("run " << run);
        const std::string mine = "mine " + std::to_string(run), other = "other " + std::to_string(run);
        const auto cli = [&](std::vector<std::string> arguments) {
            arguments.insert(arguments.begin() + 1, s.file.string());
            const Outcome outcome = Child(LUFT_PROGRAM, arguments).wait();
            row.must(outcome.status == 0, outcome.err);
            return outcome.out;
        };
        s.project.set_piece({mine, "", "", "", ""});
        cli({"piece", "--title", other});
        row.must(s.project.piece().title == other, "the other program's edit isn't seen");
        row.must(s.project.undo() == "change the notes on the piece", "undo took back another edit");
        row.must(s.project.piece().title == mine, "undo went too far");
        row.must(cli({"redo"}).find("Done again") == 0, "the other program can't do it again");
        row.must(s.project.piece().title == other, "it isn't done again");
        cli({"undo"});
        row.must(s.project.piece().title == mine, "it isn't undone");
        row.must(s.project.check().empty(), "the project isn't sound");
    }
}

TEST_CASE("a program killed while it edits hinders no other one for more than a moment") {
    Row row("two programs", "of two programs that edit one project, one is killed again and again",
            "SIGKILL to one of them after a random time; the other one goes on editing");
    Sample s;
    std::uint32_t seed = 3;
    const int wanted = runs(5, 200);
    int mine = 0;
    for (int run = 0; run < wanted; ++run) {
        row.run();
        INFO("run " << run);
        close(s.project);
        const pid_t other = fork();
        REQUIRE(other >= 0);
        if (other == 0) edit_alone(s.file, run, 1'000'000);
        s.reopen();
        seed = seed * 1664525 + 1013904223;
        const auto until = std::chrono::steady_clock::now() + std::chrono::microseconds(seed % 60'000);
        const auto edit = [&] {
            Moment m;
            m.performance = s.a;
            m.span = span(0, 1);
            m.remark = "mine";
            try {
                s.project.add_moment(m);
                ++mine;
            } catch (const Error& error) {
                row.must(error.fault() == Fault::busy, std::string("an edit failed: ") + error.what());
            }
        };
        while (std::chrono::steady_clock::now() < until)
            edit();
        ::kill(other, SIGKILL);
        waitpid(other, nullptr, 0);
        const int before = mine;
        edit();
        row.must(mine == before + 1, "after the other one's end the project is still held");
        row.must(remarks(s.project, s.a).count("mine") == static_cast<std::size_t>(mine), "an edit is lost");
        row.must(s.project.check().empty(), "the project isn't sound");
    }
}

TEST_CASE("opening a project again takes no lock from an edit that is under way in the same program") {
    Row row("two programs",
            "while one thread of a program edits, another one opens the project, and another program edits",
            "an edit held half-way; then the project is opened and closed beside it, and a second process "
            "tries to edit");
    for (int run = 0, wanted = runs(1, 50); run < wanted; ++run) {
        row.run();
        Sample s;
        Database held(s.file, Database::Mode::edit);
        {
            Transaction edit(held, Transaction::Kind::writing);
            held.run("INSERT INTO journal_entry (label, made_at, undone) VALUES ('held', '', 0)");
            { const Project beside = Project::open(s.file, Access::read); }
            const Outcome other =
                Child(LUFT_PROGRAM, {"piece", s.file.string(), "--title", "between"}).wait();
            row.must(other.status == 1 && other.err.find("Another program") != std::string::npos,
                     "a second program could edit in the middle of an edit");
            edit.commit();
        }
        row.must(s.project.piece().title == "Morning on the quay", "the edit of the second program got in");
        row.must(s.project.journal(1).front().label == "held", "the edit is lost");
    }
}
