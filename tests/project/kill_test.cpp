// Killed at any instant, nothing that was committed is lost. The child says through a pipe what has returned.
#include "desk.h"

#include <sys/wait.h>

#include <chrono>
#include <csignal>
#include <thread>

using namespace desk;

namespace {

constexpr std::uint32_t kEditKinds = 5;

/// The n-th edit of the child; each leaves a trace that can be looked for.
void edit(Project& p, PerformanceId a, const Folder& folder, std::uint32_t n) {
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
    default: {
        Performance details;
        details.label = name;
        p.add_performance(folder / "a.wav", true, details);
    }
    }
}

bool has_trace(const Project& p, PerformanceId a, std::uint32_t n, std::uint32_t last) {
    const std::string name = "edit " + std::to_string(n);
    switch (n % kEditKinds) {
    case 0:
        return n + kEditKinds <= last || p.piece().title == name ||
               p.piece().title == "edit " + std::to_string(n + 5);
    case 1:
        return std::ranges::any_of(p.moments(a), [&](const Moment& m) { return m.remark == name; });
    case 2:
        return std::ranges::any_of(p.marks(a), [&](const Mark& m) {
            return m.kind() == MarkKind::breath && m.origin == Origin::coach && m.span().start == Seconds(n);
        });
    case 3:
        return p.listening(a) && p.listening(a)->tuning >= Hertz(440 + n * 0.001);
    default:
        return std::ranges::any_of(p.performances(), [&](const Performance& x) { return x.label == name; });
    }
}

[[noreturn]] void work_until_killed(const Sample& s, int pipe) {
    try {
        Project p = Project::open(s.file);
        for (std::uint32_t n = 0;; ++n) {
            edit(p, s.a, s.folder, n);
            if (::write(pipe, &n, sizeof n) != sizeof n) _exit(1);
        }
    } catch (...) {
        _exit(2);
    }
}

} // namespace

TEST_CASE("whatever the program has reported as done is there after kill -9 at any instant") {
    std::uint32_t seed = 5;
    std::size_t reported_in_all = 0;
    for (int run = 0; run < 20; ++run) {
        INFO("run " << run);
        Sample s;
        int ends[2];
        REQUIRE(pipe(ends) == 0);
        {
            const Project closed = std::move(s.project); // no connection may cross the fork
        }
        const pid_t child = fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            ::close(ends[0]);
            work_until_killed(s, ends[1]);
        }
        ::close(ends[1]);
        // The first edit has to have returned; from there on, anywhere in some tens of edits.
        std::uint32_t n = 0;
        REQUIRE(::read(ends[0], &n, sizeof n) == sizeof n);
        seed = seed * 1664525 + 1013904223;
        std::this_thread::sleep_for(std::chrono::microseconds(seed % 150'000));
        REQUIRE(kill(child, SIGKILL) == 0);
        int status = 0;
        waitpid(child, &status, 0);
        REQUIRE(WIFSIGNALED(status)); // it was still working
        std::vector<std::uint32_t> reported = {n};
        while (::read(ends[0], &n, sizeof n) == sizeof n)
            reported.push_back(n);
        ::close(ends[0]);
        reported_in_all += reported.size();

        // Half of the runs are first opened for reading, as a program would that only shows things.
        s.reopen(run % 2 == 0 ? Access::edit : Access::read);
        for (const std::uint32_t done : reported) {
            INFO("edit " << done << " of " << reported.size());
            CHECK(has_trace(s.project, s.a, done, reported.back()));
        }
        CHECK(s.project.check().empty());
        s.reopen();
        const auto journal = s.project.journal(10'000);
        // The adding of A, what was reported, and at most one more that was done but not yet reported. Two
        // kinds of edits may say the same as before and leave no entry; here none does.
        CHECK(journal.size() >= 1 + reported.size());
        CHECK(journal.size() <= 2 + reported.size());
        std::size_t undone = 0;
        while (s.project.undo())
            ++undone;
        CHECK(undone == journal.size());
        CHECK(s.project.check().empty());
        CHECK(s.project.piece().title == "Morning on the quay");
    }
    CHECK(reported_in_all > 40);
}
