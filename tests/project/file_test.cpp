// The file as a file: what isn't a project, what is damaged, cut off, newer, read-only, or open twice.
#include "compare.h"
#include "project/file_header.h"
#include "project/rescue.h"
#include "project/schema.h"

#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>

#include <csignal>

using namespace desk;

namespace {

void close(Project& project) {
    const Project closed = std::move(project);
}

/// A closed project with an analysis and a carried recording.
std::string sample_bytes(Sample& s) {
    s.project.store_listening(s.a, analysis(50));
    s.add("b.wav", "B", true);
    Moment m;
    m.performance = s.a;
    m.span = span(0, 1);
    m.shades = {{"onset", "glottal"}};
    s.project.add_moment(m);
    close(s.project);
    return read_all(s.file);
}

} // namespace

TEST_CASE("a project is not made where something exists, nor where there is no folder") {
    Sample s;
    const std::string before = read_all(s.file);
    CHECK(fault_of([&] { Project::create(s.file, {"T", "", "", "", ""}); }) == Fault::cannot_write);
    CHECK((read_all(s.file) == before));
    CHECK(fault_of([&] {
              Project::create(s.folder / "no/x.luft", {"T", "", "", "", ""});
          }) == Fault::cannot_write);
    CHECK(fault_of([&] {
              Project::create(s.folder / "x.luft", {"", "", "", "", ""});
          }) == Fault::bad_request);
    CHECK_FALSE(fs::exists(s.folder / "x.luft"));
}

TEST_CASE("a project is not made where the journal of another one lies, which would be rolled back into it") {
    Folder folder;
    write_all(folder / "p.luft-journal", "of an edit that was cut off");
    CHECK(fault_of([&] {
              Project::create(folder / "p.luft", {"T", "", "", "", ""});
          }) == Fault::cannot_write);
    CHECK(folder.names() == std::vector<std::string>{"p.luft-journal"});
    CHECK(read_all(folder / "p.luft-journal") == "of an edit that was cut off");
}

TEST_CASE("closed, a project is one file and nothing beside it") {
    Folder folder;
    {
        Project p = Project::create(folder / "p.luft", {"T", "", "", "", ""});
        p.set_piece({"U", "", "", "", ""});
        CHECK(p.file() == folder / "p.luft");
    }
    CHECK(folder.names() == std::vector<std::string>{"p.luft"});
}

TEST_CASE("a project is opened, edited and brought up to date through a link to it, and nothing lies beside "
          "the link") {
    Sample s;
    s.project.set_piece({"Through no link", "", "", "", ""});
    close(s.project);
    const Folder elsewhere;
    const fs::path link = elsewhere / "link.luft";
    fs::create_symlink(s.file, link);
    {
        Project p = Project::open(link);
        CHECK(p.file() == fs::canonical(s.file));
        p.set_piece({"Through a link", "", "", "", ""});
        CHECK(p.undo());
    }
    CHECK(Project::open(link, Access::read).piece().title == "Through no link");
    const Rescue saved = rescue(link, elsewhere / "saved.luft");
    CHECK(saved.missing.empty());
    CHECK(elsewhere.names() == std::vector<std::string>{"link.luft", "saved.luft"});
    CHECK(fs::is_symlink(link));
}

TEST_CASE("what isn't a project is refused, and not touched") {
    Folder folder;
    CHECK(fault_of([&] { Project::open(folder / "none.luft"); }) == Fault::not_found);
    CHECK(fault_of([&] { Project::open(folder.path()); }) == Fault::unreadable);
    for (const std::string& bytes : {std::string(), std::string("x"), noise(5000), std::string(200, '\0'),
                                     std::string("SQLite format 3\0", 16), std::string("<html></html>")}) {
        write_all(folder / "f.luft", bytes);
        CHECK(fault_of([&] { Project::open(folder / "f.luft"); }) == Fault::unreadable);
        CHECK((read_all(folder / "f.luft") == bytes));
    }
    execute(folder / "other.db", "CREATE TABLE t (x); INSERT INTO t VALUES (1)");
    const std::string other = read_all(folder / "other.db");
    CHECK(fault_of([&] { Project::open(folder / "other.db"); }) == Fault::unreadable);
    CHECK((read_all(folder / "other.db") == other));
    CHECK_FALSE(fs::exists(folder / "none.luft"));
}

TEST_CASE("a project of a newer version is refused, and not touched") {
    Sample s;
    close(s.project);
    execute(s.file, "PRAGMA user_version = " + std::to_string(kVersionWritten + 1));
    const std::string before = read_all(s.file);
    CHECK(fault_of([&] { Project::open(s.file); }) == Fault::newer);
    CHECK(fault_of([&] { Project::open(s.file, Access::read); }) == Fault::newer);
    CHECK((read_all(s.file) == before));
}

TEST_CASE("a project that brings triggers or views, or lacks a table or column, is refused") {
    Sample s;
    close(s.project);
    const std::string good = read_all(s.file);
    for (const char* sql :
         {"CREATE TRIGGER t AFTER INSERT ON mark BEGIN DELETE FROM moment; END", "CREATE VIEW v AS SELECT 1",
          "DROP TABLE journal_value", "ALTER TABLE moment DROP COLUMN remark"}) {
        INFO(sql);
        write_all(s.file, good);
        execute(s.file, sql);
        CHECK(fault_of([&] { Project::open(s.file); }) == Fault::unreadable);
    }
    write_all(s.file, good);
    CHECK(Project::open(s.file).performances().size() == 1);
}

TEST_CASE("a project cut off at any length is refused, never taken for a shorter one") {
    Sample s;
    const std::string whole = sample_bytes(s);
    std::vector<std::size_t> lengths = {1,   15,  16,   99,   100,  101,
                                        511, 512, 4095, 4096, 4097, whole.size() - 1};
    for (std::size_t n = 4096; n < whole.size(); n += 4096)
        lengths.push_back(n);
    for (std::size_t n = 777; n < whole.size(); n += 5003)
        lengths.push_back(n);
    for (const std::size_t length : lengths) {
        INFO(length << " of " << whole.size());
        write_all(s.file, whole.substr(0, length));
        CHECK(fault_of([&] { Project::open(s.file); }) == Fault::unreadable);
        CHECK(read_all(s.file).size() == length);
    }
}

TEST_CASE("a page full of noise anywhere is reported, and never worse than an error in words") {
    Sample s;
    const std::string whole = sample_bytes(s);
    constexpr std::size_t kPage = 4096;
    int reported = 0;
    for (std::size_t page = 0; page < whole.size() / kPage; ++page) {
        INFO("page " << page);
        std::string broken = whole;
        broken.replace(page * kPage, kPage, noise(kPage, static_cast<std::uint32_t>(page) + 7));
        write_all(s.file, broken);
        try {
            if (!Project::open(s.file, Access::read).check().empty()) ++reported;
        } catch (const Error& e) {
            CHECK(e.fault() == Fault::unreadable);
            ++reported;
        }
    }
    CHECK(reported == static_cast<int>(whole.size() / kPage));
}

TEST_CASE("flipped bits never crash the program, whatever it reads or writes") {
    Sample s;
    const std::string whole = sample_bytes(s);
    std::uint32_t seed = 11;
    for (int run = 0; run < 100; ++run) {
        std::string broken = whole;
        for (int flip = 0; flip < 3; ++flip) {
            seed = seed * 1664525 + 1013904223;
            broken[(seed >> 4) % broken.size()] ^= static_cast<char>(1U << (seed % 8));
        }
        INFO("run " << run);
        fs::remove(s.file.string() + "-journal"); // of the file before
        write_all(s.file, broken);
        try {
            Project p = Project::open(s.file);
            (void)p.check();
            for (const Performance& x : p.performances()) {
                (void)p.marks(x.id, true);
                (void)p.moments(x.id, true);
                (void)p.curves(x.id);
                (void)p.listening(x.id);
            }
            (void)p.vocabulary();
            p.set_piece({"after", "", "", "", ""});
            while (p.undo()) {
            }
            while (p.redo()) {
            }
        } catch (const Error&) {
            // in words: that is all one can ask for
        }
    }
    SUCCEED("100 damaged files");
}

TEST_CASE("check names damage that SQLite can't know of") {
    Sample s;
    const std::string good = sample_bytes(s);
    const auto damage = [&](const std::string& sql, const std::string& word) {
        INFO(sql);
        write_all(s.file, good);
        execute(s.file, "PRAGMA ignore_check_constraints = ON; PRAGMA foreign_keys = OFF; " + sql);
        const auto found = Project::open(s.file, Access::read).check();
        REQUIRE_FALSE(found.empty());
        std::string all;
        for (const Damage& d : found)
            all += d.what + "\n";
        CHECK_THAT(all, Catch::Contains(word));
    };
    write_all(s.file, good);
    CHECK(Project::open(s.file, Access::read).check().empty());
    damage("UPDATE curve SET samples = zeroblob(3) WHERE name = 'ring_db'", "ring_db");
    damage("UPDATE curve SET samples = CAST(x'0000807f' || substr(samples, 5) AS BLOB) WHERE name = 'f0_hz'",
           "f0_hz");
    damage(
        "UPDATE curve SET samples = CAST(x'00000040' || substr(samples, 5) AS BLOB) WHERE name = 'voicing'",
        "voicing"); // 2.0
    damage("DELETE FROM curve WHERE name = 'f3_hz'", "f3_hz");
    damage("UPDATE carried_chunk SET bytes = zeroblob(length(bytes))", "fingerprint");
    damage("UPDATE carried_chunk SET bytes = zeroblob(10)", "lost");
    damage("DELETE FROM carried_chunk", "lost");
    damage("UPDATE mark SET detail = '{' WHERE kind = 'note'", "note");
    damage("UPDATE mark SET detail = '{}' WHERE kind = 'switch'", "switch");
    damage("UPDATE mark SET confidence = 2", "mark");
    damage("UPDATE mark SET end_s = -1", "mark");
    damage("UPDATE mark SET state = 'maybe'", "maybe");
    damage("UPDATE moment_shade SET shade = 'none-such'", "missing");
    damage("UPDATE drill SET steps = 'x' WHERE key = 'straw'", "drill book");
    damage("DELETE FROM piece", "piece");
    damage("DELETE FROM performance WHERE label = 'A'", "missing");
}

TEST_CASE("marks of an earlier build, without level shape and dynamic mark, are read as having none") {
    Sample s;
    sample_bytes(s);
    execute(s.file, "UPDATE mark SET detail = '{}' WHERE kind = 'phrase';"
                    "UPDATE mark SET detail = json_remove(detail, '$.dynamic') WHERE kind = 'note'");
    const Project p = Project::open(s.file, Access::read);
    CHECK(p.check().empty());
    int phrases = 0, notes = 0;
    for (const Mark& m : p.marks(p.performance("A").id)) {
        if (const auto* phrase = std::get_if<marks::Phrase>(&m.what)) {
            ++phrases;
            CHECK_FALSE(phrase->level);
            CHECK_FALSE(phrase->dynamic);
        } else if (const auto* note = std::get_if<marks::Note>(&m.what)) {
            ++notes;
            CHECK_FALSE(note->dynamic);
        }
    }
    CHECK(phrases > 0);
    CHECK(notes > 0);
}

TEST_CASE("a project opened for reading can be read, and every edit is refused") {
    Sample s;
    sample_bytes(s);
    const std::string before = read_all(s.file);
    {
        Project p = Project::open(s.file, Access::read);
        const PerformanceId a = p.performance("A").id;
        CHECK(p.marks(a).size() == 6);
        CHECK(p.curves(a).frames() == 50);
        CHECK(p.check().empty());
        const auto refused = [](auto call) { CHECK(fault_of(call) == Fault::cannot_write); };
        refused([&] { p.set_piece({"x", "", "", "", ""}); });
        refused([&] { p.remove_performance(a); });
        refused([&] { p.add_performance(s.folder / "a.wav", false, {}); });
        refused([&] { p.relink(a, s.folder / "a.wav"); });
        refused([&] { p.store_listening(a, analysis()); });
        refused([&] { (void)p.undo(); });
        refused([&] { (void)p.redo(); });
    }
    CHECK((read_all(s.file) == before));
}

TEST_CASE("a file that may not be written is opened for reading only") {
    Sample s;
    sample_bytes(s);
    REQUIRE(chmod(s.folder.path().c_str(), 0755) == 0);
    REQUIRE(chmod(s.file.c_str(), 0444) == 0);
    constexpr uid_t kNobody = 65534;
    const bool root = geteuid() == 0; // who may write anything
    if (root) REQUIRE(seteuid(kNobody) == 0);
    const Fault fault = fault_of([&] { Project::open(s.file); });
    const auto read_only = Project::open(s.file, Access::read).performances().size();
    if (root) REQUIRE(seteuid(0) == 0);
    CHECK(fault == Fault::cannot_write);
    CHECK(read_only == 2);
}

TEST_CASE("two programs have one project open, and each sees the other's edits at once") {
    Sample s;
    Project other = Project::open(s.file);
    s.project.set_piece({"from one", "", "", "", ""});
    CHECK(other.piece().title == "from one");
    other.set_piece({"from the other", "", "", "", ""});
    CHECK(s.project.piece().title == "from the other");
    CHECK(s.project.undo());
    CHECK(other.piece().title == "from one");
}

TEST_CASE("an edit while another program holds the project ends in 'busy', and changes nothing") {
    Sample s;
    sqlite3* db = nullptr;
    REQUIRE(sqlite3_open(s.file.c_str(), &db) == SQLITE_OK);
    REQUIRE(sqlite3_exec(db, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr) == SQLITE_OK);
    CHECK(s.project.piece().title == "Morning on the quay"); // reading goes on
    CHECK(fault_of([&] { s.project.set_piece({"x", "", "", "", ""}); }) == Fault::busy);
    sqlite3_exec(db, "ROLLBACK", nullptr, nullptr, nullptr);
    sqlite3_close(db);
    CHECK(s.project.piece().title == "Morning on the quay");
    s.project.set_piece({"now", "", "", "", ""});
    CHECK(s.project.piece().title == "now");
}

TEST_CASE("a full disk ends an edit in words, and the project is as it was") {
    Sample s;
    s.project.store_listening(s.a, analysis());
    write_all(s.folder / "big.wav", noise(4U << 20));
    const std::string before = read_all(s.file);
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        // No file may grow beyond this: as on a full disk, writing fails.
        std::signal(SIGXFSZ, SIG_IGN);
        const rlimit limit{before.size() + 100'000, before.size() + 100'000};
        setrlimit(RLIMIT_FSIZE, &limit);
        try {
            Project p = Project::open(s.file);
            p.add_performance(s.folder / "big.wav", true, {});
        } catch (const Error& e) {
            _exit(e.fault() == Fault::cannot_write ? 7 : 8);
        }
        _exit(9);
    }
    int status = 0;
    waitpid(child, &status, 0);
    REQUIRE(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 7);
    CHECK(s.project.check().empty()); // rolls back what the failed edit had already written
    CHECK((read_all(s.file) == before));
    s.project.set_piece({"goes on", "", "", "", ""});
}
