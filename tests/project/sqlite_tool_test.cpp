// The project read by an independent program: the sqlite3 command-line tool (Debian package sqlite3).
#include "desk.h"
#include "tools/programs.h"

using namespace desk;

namespace {

std::string sqlite3_tool(const fs::path& file, const std::string& sql) {
    return run("sqlite3 -readonly " + quoted(file) + " \"" + sql + "\"");
}

} // namespace

TEST_CASE("the sqlite3 tool finds a project sound, knows it by its header, and reads marks and curves") {
    Sample s;
    s.project.store_listening(s.a, analysis());
    const std::string a = std::to_string(s.a.value);
    CHECK(sqlite3_tool(s.file, "PRAGMA integrity_check; PRAGMA foreign_key_check;") == "ok\n");
    CHECK(sqlite3_tool(s.file, "PRAGMA application_id; PRAGMA user_version; PRAGMA journal_mode;") ==
          std::to_string(0x4C554654) + "\n3\ndelete\n");
    CHECK(sqlite3_tool(s.file,
                       "SELECT kind, start_s, end_s FROM mark WHERE kind <> 'phrase' ORDER BY start_s;") ==
          "note|0.1|0.9\nbreath|1.0|1.4\nnote|1.6|2.8\nswitch|2.0|2.0\n");
    CHECK(
        sqlite3_tool(
            s.file, "SELECT json_extract(detail, '$.midi') FROM mark WHERE kind = 'note' AND start_s > 1;") ==
        "64.25\n");
    CHECK(sqlite3_tool(s.file, "SELECT count(*), min(length(samples)), max(length(samples)) FROM curve;") ==
          "14|1200|1200\n");
    // Frame 1 of f0_hz is 100 (1 + sin 0.01) = 100.99998, in IEEE 754 single precision 0x42C9...., low byte
    // first; frame 0 is none: a NaN, 0x7FC0.... .
    const std::string f0 = sqlite3_tool(
        s.file,
        "SELECT hex(substr(samples, 1, 8)) FROM curve WHERE name = 'f0_hz' AND performance = " + a + ";");
    REQUIRE(f0.size() == 17);
    CHECK(f0.substr(4, 4) == "C07F");
    CHECK(f0.substr(12, 4) == "C942");
}

TEST_CASE("the first bytes of the file are those of SQLite, with our mark at byte 68") {
    Sample s;
    const std::string bytes = read_all(s.file);
    CHECK(bytes.substr(0, 16) == std::string("SQLite format 3\0", 16));
    CHECK(bytes.substr(68, 4) == "LUFT"); // sqlite.org/fileformat2.html, section 1.3.14
    CHECK(bytes.substr(60, 4) == std::string("\0\0\0\3", 4));
}
