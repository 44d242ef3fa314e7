// Killed at any instant, nothing that was committed is lost. The child says through a pipe how many edits
// have returned; the same edits, undisturbed, say what must be there.
#include "faults/row.h"
#include "project/compare.h"

#include <sys/wait.h>

#include <chrono>
#include <csignal>
#include <thread>

using namespace desk;
using luft::test::Row;
using luft::test::runs;

namespace {

constexpr std::uint32_t kEditKinds = 11;

/// The n-th edit; the same n always does the same.
void edit(Project& p, const fs::path& folder, std::uint32_t n) {
    const PerformanceId a = p.performance("A").id, b = p.performance("B").id;
    const std::string name = "edit " + std::to_string(n);
    switch (n % kEditKinds) {
    case 0:
        p.set_piece({name, "", "", "", ""});
        break;
    case 1: {
        Moment m;
        m.performance = a;
        m.span = span(n, n + 1);
        m.remark = name;
        m.shades = {{"onset", "glottal"}};
        p.add_moment(m);
        break;
    }
    case 2:
        p.add_mark({{}, a, {}, {}, breath(n, n + 0.5)});
        break;
    case 3: {
        marks::Analysis heard = analysis(2000);
        heard.tuning = Hertz(440 + n * 0.001);
        for (std::uint32_t i = 0; i < 200; ++i)
            heard.notes.push_back(note(4 + i, 4.5 + i, 60 + (n % 7)));
        std::ranges::sort(heard.notes, {}, [](const marks::Note& x) { return x.span.start; });
        p.store_listening(a, heard);
        break;
    }
    case 4: {
        Performance details;
        details.label = name;
        p.add_performance(folder / "a.wav", true, details);
        break;
    }
    case 5:
        p.set_sung_words(
            a, {{{}, a, "wa", true, Seconds(0.1)}, {{}, a, "ter" + std::to_string(n), false, Seconds(n)}});
        break;
    case 6: {
        ScriptItem item;
        item.performance = a;
        item.at = Seconds(n);
        item.text = name;
        p.add_script_item(item);
        break;
    }
    case 7:
        p.set_pins(a, b, {{Seconds(1), Seconds(1.5)}, {Seconds(n), Seconds(n + 1)}});
        break;
    case 8:
        p.undo();
        break;
    case 9:
        p.undo();
        break;
    default:
        p.redo();
    }
}

[[noreturn]] void work_until_killed(const Sample& s, int pipe) {
    try {
        Project p = Project::open(s.file);
        for (std::uint32_t n = 0;; ++n) {
            edit(p, s.folder.path(), n);
            if (::write(pipe, &n, sizeof n) != sizeof n) _exit(1);
        }
    } catch (...) {
        _exit(2);
    }
}

/// Lets the child work for that long once its first edit has returned; how many have returned in the end.
std::uint32_t killed_after(const Sample& s, std::chrono::microseconds time) {
    int ends[2];
    REQUIRE(pipe(ends) == 0);
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        ::close(ends[0]);
        work_until_killed(s, ends[1]);
    }
    ::close(ends[1]);
    std::uint32_t n = 0, reported = 1;
    REQUIRE(::read(ends[0], &n, sizeof n) == sizeof n);
    std::this_thread::sleep_for(time);
    REQUIRE(kill(child, SIGKILL) == 0);
    int status = 0;
    waitpid(child, &status, 0);
    REQUIRE(WIFSIGNALED(status)); // it was still working
    while (::read(ends[0], &n, sizeof n) == sizeof n)
        ++reported;
    ::close(ends[0]);
    return reported;
}

/// The undisturbed one beside: it is led on to the same count of edits.
class Twin {
  public:
    Twin(const Sample& s, const std::string& start)
        : folder_(s.folder.path()), file_(s.folder / "twin.luft") {
        write_all(file_, start);
    }
    std::string after(std::uint32_t edits) {
        Project p = Project::open(file_);
        for (; done_ < edits; ++done_)
            edit(p, folder_, done_);
        return contents(file_);
    }

  private:
    fs::path folder_, file_;
    std::uint32_t done_ = 0;
};

} // namespace

TEST_CASE("whatever the program has reported as done is there after kill -9 at any instant") {
    Row row("kill", "killed while editing: marks, moments, words, script, pins, recordings, undo and redo",
            "SIGKILL after a random time, up to 0.15 s, to a process that edits without a pause");
    std::uint32_t seed = 5;
    std::uint32_t reported_in_all = 0;
    const int wanted = runs(6, 400);
    for (int run = 0; run < wanted; ++run) {
        row.run();
        INFO("run " << run);
        Sample s;
        s.add("b.wav", "B");
        {
            const Project closed = std::move(s.project); // no connection may cross the fork
        }
        Twin twin(s, read_all(s.file));
        seed = seed * 1664525 + 1013904223;
        const std::uint32_t reported = killed_after(s, std::chrono::microseconds(seed % 150'000));
        reported_in_all += reported;

        // Half of the runs are first opened for reading, as a program would that only shows things.
        s.reopen(run % 2 == 0 ? Access::edit : Access::read);
        for (const Damage& damage : s.project.check())
            row.lost(damage.what);
        // At most one more was done, and not yet reported.
        const std::string now = contents(s.file);
        INFO(reported << " edits reported");
        row.must(now == twin.after(reported) || now == twin.after(reported + 1),
                 "the project isn't as the reported edits leave it");
        s.reopen();
        std::size_t undone = 0;
        while (s.project.undo())
            ++undone;
        row.must(undone > 0, "nothing could be undone");
        row.must(s.project.performances().empty(), "undo doesn't lead back to the start");
        row.must(s.project.check().empty(), "undone, the project isn't sound");
        row.must(s.project.piece().title == "Morning on the quay", "undone, the title is another");
    }
    CHECK(reported_in_all > static_cast<std::uint32_t>(2 * wanted));
}
