// Where the project lies: a disk that is really full, what may not be written, and a file that goes away.
#include "faults/row.h"
#include "project/compare.h"
#include "scenes/sung.h"
#include "tools/child.h"
#include "tools/programs.h"

#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>

#include <csignal>
#include <cstdlib>

using namespace desk;
using luft::test::Row;
using luft::test::runs;

namespace {

/// Done in a process of its own, by a user who isn't allowed everything. Its status: 0 when all was as it
/// must be.
int as_nobody(const std::function<bool()>& work) {
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        constexpr uid_t kNobody = 65534;
        if (geteuid() == 0 && (setegid(kNobody) != 0 || seteuid(kNobody) != 0)) _exit(3);
        bool fine = false;
        try {
            fine = work();
        } catch (...) {
            _exit(2);
        }
        _exit(fine ? 0 : 1);
    }
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 128;
}

bool refused(const std::function<void()>& call, Fault with) {
    try {
        call();
    } catch (const Error& error) {
        return error.fault() == with && !error.advice().empty();
    }
    return false;
}

void close(Project& project) {
    const Project closed = std::move(project);
}

/// Edits one after the other until no file may grow any more; how many were done. Ends the process.
[[noreturn]] void edit_until_full(const fs::path& file, rlim_t most, int pipe) {
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{most, most};
    setrlimit(RLIMIT_FSIZE, &limit);
    int edits = 0;
    try {
        Project project = Project::open(file);
        const auto a = project.performance("A").id;
        for (;; ++edits) {
            project.add_mark({{}, a, {}, {}, breath(edits, edits + 0.5)});
            if (::write(pipe, &edits, sizeof edits) != sizeof edits) _exit(9);
        }
    } catch (const Error& error) {
        _exit(error.fault() == Fault::cannot_write ? 7 : 8);
    }
}

} // namespace

TEST_CASE("no file may grow any more: each edit that was done is there, the next one is refused in words") {
    Row row("disk", "no file can grow beyond some size while marks are added, one after the other",
            "a limit on the size of files (RLIMIT_FSIZE), another one each run");
    for (int run = 0, wanted = runs(5, 200); run < wanted; ++run) {
        row.run();
        Sample s;
        close(s.project);
        int ends[2];
        REQUIRE(pipe(ends) == 0);
        const auto most =
            static_cast<rlim_t>(fs::file_size(s.file) + 1000 + 777 * static_cast<unsigned>(run));
        const pid_t child = fork();
        REQUIRE(child >= 0);
        if (child == 0) edit_until_full(s.file, most, ends[1]);
        ::close(ends[1]);
        std::size_t done = 0;
        for (int n = 0; ::read(ends[0], &n, sizeof n) == sizeof n; ++done) {
        }
        ::close(ends[0]);
        int status = 0;
        REQUIRE(waitpid(child, &status, 0) == child);
        INFO("run " << run << ", " << done << " edits");
        row.must(WIFEXITED(status) && WEXITSTATUS(status) == 7, "the full disk wasn't named");
        s.reopen();
        row.must(s.project.marks(s.a).size() == done, "not each edit that was done is there");
        row.must(s.project.check().empty(), "the project isn't sound");
        row.must(s.project.undo().has_value(), "nothing can be undone");
    }
}

TEST_CASE("on a disk that is full, each command that was done is there, the others say why not") {
    const char* fault = "the disk is full: making a project, editing, carrying a recording";
    const char* how =
        "a file system of 1 MB in memory (tmpfs), mounted where only the test sees it, is filled to "
        "the last byte but some";
    const Folder folder;
    // Root needs no user namespace for it, which a changed root wouldn't permit.
    const std::string own = geteuid() == 0 ? "-m" : "-rm";
    if (std::system(("unshare " + own + " true 2>/dev/null").c_str()) != 0) {
        WARN("No file system can be mounted here; only the limit on the size of files was tried.");
        Row row("disk", fault, how);
        return;
    }
    Row row("disk", fault, how);
    const Folder elsewhere;
    luft::scenes::write_sung(luft::scenes::three_lines(), elsewhere / "b.wav"); // a whole megabyte
    for (int run = 0, wanted = runs(2, 40); run < wanted; ++run) {
        row.run();
        // Ends in 0 when every command's word was kept; says what happened otherwise.
        const std::string script = R"(set -u
mount -t tmpfs -o size=1m none "$1" || exit 3
cd "$1"
"$2" new song.luft --title T > /dev/null || exit 4
done=0
head -c "$3" /dev/zero > ballast
dd if=/dev/zero of=filler bs=1k 2> /dev/null
truncate -s "-$4" filler 2> /dev/null
for i in $(seq 1 200); do
    said=$("$2" piece song.luft --title "Title $i" 2>&1) || break
    done=$i
    "$2" vocabulary song.luft add-facet "facet-$i" > /dev/null 2>&1
done
"$2" add song.luft "$5" --carry --no-listen > /dev/null 2>&1 && { echo "there was room for a recording"; exit 12; }
"$2" new other.luft --title U > /dev/null 2>&1 && { "$2" check other.luft > /dev/null || { echo "half a project was made"; exit 5; }; }
case "$said" in *"can't be written"*) ;; *) echo "refused in other words: $said"; exit 11 ;; esac
rm -f filler ballast
"$2" check song.luft || exit 6
[ "$done" = 0 ] || "$2" piece song.luft | grep -q "Title $done" || { echo "edit $done is lost"; exit 7; }
"$2" piece song.luft --title After > /dev/null || exit 8
"$2" undo song.luft > /dev/null || exit 9
ls | grep -v -e song.luft -e other.luft && exit 10
exit 0
)";
        const Outcome outcome =
            Child("unshare", {own, "bash", "-c", script, "fill", folder.path().string(), LUFT_PROGRAM,
                              std::to_string(1000 * run), std::to_string(4096 * (run % 12)),
                              (elsewhere / "b.wav").string()})
                .wait();
        INFO("run " << run << ": " << outcome.out << outcome.err);
        row.must(outcome.status == 0,
                 "status " + std::to_string(outcome.status) + ": " + outcome.out + outcome.err);
    }
}

TEST_CASE("what may not be written is shown, and every edit of it is refused in words") {
    Row row("disk", "the project, or the folder that it lies in, may not be written",
            "permissions taken away, as a user who isn't allowed everything");
    for (const bool folder_too : {false, true}) {
        row.run();
        Sample s;
        s.project.store_listening(s.a, analysis(50));
        close(s.project);
        const std::string before = read_all(s.file);
        REQUIRE(chmod(s.file.c_str(), folder_too ? 0666 : 0444) == 0);
        REQUIRE(chmod(s.folder.path().c_str(), folder_too ? 0555 : 0777) == 0);
        row.must(as_nobody([&] { return refused([&] { Project::open(s.file); }, Fault::cannot_write); }) == 0,
                 "opened to edit");
        row.must(as_nobody([&] { return Project::open(s.file, Access::read).marks(s.a).size() == 6; }) == 0,
                 "it can't be read");
        row.must(read_all(s.file) == before, "it was changed");
    }
}

TEST_CASE("a project that goes away while it is open takes no more edits, and what was open can be saved") {
    Row row("disk", "the project file is removed, moved away, or replaced by another while it is open",
            "done between two edits of an open project");
    for (const char* how : {"removed", "moved", "replaced", "folder moved"}) {
        row.run();
        INFO(how);
        Sample s;
        s.project.set_piece({"kept", "", "", "", ""});
        const std::string before = contents(s.file);
        const std::string what = how;
        Folder other;
        const fs::path moved = other / "moved.luft";
        if (what == "removed") fs::remove(s.file);
        if (what == "moved" || what == "replaced") fs::rename(s.file, moved);
        if (what == "replaced") Project::create(s.file, {"another", "", "", "", ""});
        if (what == "folder moved") fs::rename(s.folder.path(), s.folder.path().string() + "-moved");
        row.must(refused(
                     [&] {
                         s.project.set_piece({"lost", "", "", "", ""});
                     },
                     Fault::not_found),
                 "an edit went into a file that is gone");
        row.must(refused([&] { s.project.undo(); }, Fault::not_found), "undo went into a file that is gone");
        row.must(s.project.piece().title == "kept", "what is open can't be read any more");
        if (what == "moved" || what == "replaced")
            row.must(contents(moved) == before, "an edit went into the file that was moved away");
        if (what == "replaced")
            row.must(Project::open(s.file, Access::read).piece().title == "another",
                     "the other one was changed");
        const fs::path saved = (what == "folder moved" ? other.path() : s.folder.path()) / "saved.luft";
        s.project.save_copy(saved);
        row.must(contents(saved) == before || what == "folder moved", "what was saved isn't what was open");
        Project again = Project::open(saved);
        row.must(again.check().empty() && again.piece().title == "kept", "what was saved isn't sound");
        row.must(again.undo() && again.undo(), "the history wasn't saved");
        if (what == "folder moved") fs::remove_all(s.folder.path().string() + "-moved");
    }
}
