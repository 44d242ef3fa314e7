// What isn't a recording: a reason in one line, exit status 1, and nothing written.
#include "cli/program.h"
#include "scenes/sung.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <string>
#include <vector>

using namespace luft::cli::test;
using namespace luft::test;

namespace {

/// Makes each kind of broken input; its name in the folder.
struct Broken {
    const char* name;
    void (*make)(const std::string& file);
};

void make_truncated(const std::string& file) {
    // A movie that has lost its second half has lost its table of contents.
    const std::string whole = file + ".whole.mp4";
    REQUIRE(run("ffmpeg", {"-nostdin", "-v", "error", "-f", "lavfi", "-i", "sine=frequency=220:duration=3",
                           "-c:a", "aac", "-y", whole})
                .status == 0);
    const std::string bytes = read_all(whole);
    std::filesystem::remove(whole);
    write_all(file, bytes.substr(0, bytes.size() / 2));
}

void make_short_wave(const std::string& file) {
    REQUIRE(run("ffmpeg",
                {"-nostdin", "-v", "error", "-f", "lavfi", "-i", "sine=frequency=220:duration=8", "-y", file})
                .status == 0);
    std::filesystem::resize_file(file, std::filesystem::file_size(file) / 2);
}

void make_video_only(const std::string& file) {
    REQUIRE(run("ffmpeg", {"-nostdin", "-v", "error", "-f", "lavfi", "-i",
                           "testsrc=duration=1:size=64x48:rate=10", "-an", "-c:v", "mpeg4", "-y", file})
                .status == 0);
}

void make_playlist(const std::string& file) {
    write_all(file, "#EXTM3U\n#EXT-X-TARGETDURATION:10\n#EXTINF:10,\n/etc/hostname\n#EXT-X-ENDLIST\n");
}

const std::vector<Broken> kTable = {
    {"missing.wav", [](const std::string&) {}},
    {"empty.wav", [](const std::string& file) { write_all(file, ""); }},
    {"text.wav", [](const std::string& file) { write_all(file, "This is a letter, not a song.\n"); }},
    {"zeros.mp3", [](const std::string& file) { write_all(file, std::string(5000, '\0')); }},
    {"truncated.mp4", make_truncated},
    {"truncated.wav", make_short_wave},
    {"silent-movie.mp4", make_video_only},
    {"playlist.m3u8", make_playlist},
    {"folder.wav", [](const std::string& file) { std::filesystem::create_directory(file); }},
};

/// One line that begins with the program's name and says more than that.
void check_complaint(const Outcome& outcome) {
    CHECK(outcome.status == 1);
    CHECK(outcome.out.empty());
    REQUIRE(lines(outcome.err).size() == 1);
    CHECK(outcome.err.starts_with("luftpause: "));
    CHECK(outcome.err.ends_with(".\n"));
    CHECK(outcome.err.size() > 25);
}

} // namespace

TEST_CASE("listen refuses what isn't a recording in one line, and writes nothing") {
    for (const Broken& broken : kTable) {
        const Folder folder;
        broken.make(folder / broken.name);
        const auto before = folder.names();
        const Outcome outcome = luftpause({"listen", folder / broken.name, "--out", folder / "out.json"});
        INFO(broken.name << ": " << outcome.err);
        check_complaint(outcome);
        CHECK(folder.names() == before);
    }
}

TEST_CASE("add refuses what isn't a recording in one line, and leaves the project as it was") {
    for (const Broken& broken : kTable) {
        const Folder folder;
        broken.make(folder / broken.name);
        done({"new", folder / "a.luft", "--title", "Three lines"});
        const Outcome outcome = luftpause({"add", folder / "a.luft", folder / broken.name});
        INFO(broken.name << ": " << outcome.err);
        check_complaint(outcome);
        CHECK(done({"performance", folder / "a.luft", "list", "--json"}) == "[]\n");
        CHECK(luftpause({"add", folder / "a.luft", folder / broken.name, "--no-listen"}).status == 1);
        CHECK(done({"performance", folder / "a.luft", "list", "--json"}) == "[]\n");
    }
}

TEST_CASE("a recording that lost its end is taken as far as it goes only when told so") {
    const Folder folder;
    make_short_wave(folder / "short.wav");
    const Outcome refused = luftpause({"listen", folder / "short.wav"});
    check_complaint(refused);
    CHECK(refused.err.find("announces 0:08.0 and ends at 0:04.0") != std::string::npos);
    CHECK(done({"listen", folder / "short.wav", "--partial"}).find("luftpause-analysis/1") !=
          std::string::npos);
    done({"new", folder / "a.luft", "--title", "Three lines"});
    done({"add", folder / "a.luft", folder / "short.wav", "--partial"});
    done({"listen", folder / "a.luft"});
}

TEST_CASE("What isn't a project is refused in one line by every verb that opens one") {
    const Folder folder;
    write_all(folder / "text.luft", "This is a letter, not a project.\n");
    write_all(folder / "empty.luft", "");
    for (const std::string name : {"text.luft", "empty.luft", "missing.luft"})
        for (const std::vector<std::string>& verb : std::vector<std::vector<std::string>>{
                 {"marks"}, {"profile"}, {"cues"}, {"undo"}, {"redo"}, {"check"}, {"listen"}, {"piece"}}) {
            const Outcome outcome = luftpause({verb.front(), folder / name});
            INFO(verb.front() << " " << name << ": " << outcome.err);
            check_complaint(outcome);
        }
    CHECK(folder.names() == std::vector<std::string>{"empty.luft", "text.luft"});
    CHECK(read_all(folder / "text.luft") == "This is a letter, not a project.\n");
}

TEST_CASE("A result that can't be written is said in one line, with status 1") {
    const Folder folder;
    luft::scenes::write_sung(luft::scenes::three_lines(), folder / "sung.wav");
    const Outcome nowhere = luftpause({"listen", folder / "sung.wav", "--out", folder / "no/such/out.json"});
    check_complaint(nowhere);
    CHECK(folder.names() == std::vector<std::string>{"sung.wav"});
}
