// luftpause listen on several recordings at once: the same as one after the other, whatever --jobs says.
#include "cli/program.h"
#include "scenes/sung.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <csignal>
#include <filesystem>
#include <thread>

using namespace luft::cli::test;
using namespace luft::test;

namespace {

using Arguments = std::vector<std::string>;

/// Three recordings of different songs, two of which have the same name but for the folder and a capital.
struct Recordings {
    Folder folder;
    Arguments files;

    Recordings() {
        std::filesystem::create_directory(folder / "live");
        int times = 0;
        for (const char* name : {"ferry.wav", "live/Ferry.wav", "mill.wav"}) {
            luft::scenes::write_sung(luft::scenes::three_lines(++times), folder / name);
            files.push_back(folder / name);
        }
    }
    [[nodiscard]] Arguments listen(const std::string& into, const std::string& jobs) const {
        Arguments arguments{"listen"};
        arguments.insert(arguments.end(), files.begin(), files.end());
        arguments.insert(arguments.end(), {"--into", folder / into, "--jobs", jobs});
        return arguments;
    }
    [[nodiscard]] std::string read(const std::string& name) const { return read_all(folder / name); }
};

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
        text.replace(at, from.size(), to);
    return text;
}

} // namespace

TEST_CASE("listen writes one analysis a recording, the same bytes whatever --jobs and as listened to alone") {
    const Recordings given;
    const std::string one = done(given.listen("one", "1"));
    CHECK(lines(one).size() == 3);
    for (const std::string jobs : {"2", "7"}) {
        const std::string said = done(given.listen("by" + jobs, jobs));
        CHECK(replaced(said, given.folder / ("by" + jobs), given.folder / "one") == one);
        for (const std::string name : {"/ferry.json", "/Ferry-2.json", "/mill.json"})
            CHECK(given.read("by" + jobs + name) == given.read("one" + name));
    }
    CHECK(done({"listen", given.files[1]}) == given.read("one/Ferry-2.json"));
    CHECK(given.read("one/ferry.json") != given.read("one/Ferry-2.json"));
}

TEST_CASE("A broken recording among several is named at the end with status 1, and the others are written") {
    Recordings given;
    write_all(given.folder / "letter.wav", "This is a letter, not a song.\n");
    given.files.insert(given.files.begin(), given.folder / "letter.wav");
    given.files.push_back(given.folder / "missing.wav");
    const Outcome outcome = luftpause(given.listen("heard", "2"));
    CHECK(outcome.status == 1);
    CHECK(lines(outcome.out).size() == 3);
    const auto complaints = lines(outcome.err);
    REQUIRE(complaints.size() == 3);
    CHECK(complaints[0].starts_with(given.files.front() + ": "));
    CHECK(complaints[1].starts_with(given.files.back() + ": "));
    CHECK(complaints[2] == "luftpause: 2 of 5 recordings couldn't be listened to: " + given.files.front() +
                               ", " + given.files.back() + ".");
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(given.folder / "heard"))
        names.push_back(entry.path().filename());
    std::sort(names.begin(), names.end());
    CHECK(names == std::vector<std::string>{"Ferry-2.json", "ferry.json", "mill.json"});
}

TEST_CASE("Ctrl+C stops all recordings at once and leaves only whole files") {
    const Folder folder;
    luft::scenes::write_sung(luft::scenes::three_lines(), folder / "short.wav");
    luft::scenes::write_sung(luft::scenes::three_lines(40), folder / "long.wav");
    Child child(LUFT_PROGRAM, {"listen", folder / "short.wav", folder / "long.wav", folder / "long.wav",
                               "--into", folder / "heard", "--jobs", "3"});
    while (!std::filesystem::exists(folder / "heard/short.json"))
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    child.signal(SIGINT);
    const Outcome outcome = child.wait();
    CHECK(outcome.status == 130);
    CHECK(outcome.err == "luftpause: Stopped.\n");
    for (const auto& entry : std::filesystem::directory_iterator(folder / "heard")) {
        INFO(entry.path());
        CHECK(entry.path().filename() == "short.json");
        CHECK_NOTHROW(nlohmann::json::parse(read_all(entry.path())));
    }
}

TEST_CASE("listen --all hears every performance of a project, with the same marks whatever --jobs") {
    const Recordings given;
    const std::string first = given.folder / "first.luft";
    done({"new", first, "--title", "Three lines"});
    for (const std::string label : {"A", "B", "C"})
        done({"add", first, given.files[static_cast<std::size_t>(label[0] - 'A')], "--label", label,
              "--no-listen"});
    const std::string second = given.folder / "second.luft";
    std::filesystem::copy_file(first, second);
    const std::string one = done({"listen", first, "--all", "--jobs", "1"});
    CHECK(done({"listen", second, "--all", "--jobs", "3", "--into", given.folder / "heard"}) == one);
    REQUIRE(lines(one).size() == 3);
    CHECK(lines(one)[2].starts_with("C: "));
    for (const std::string label : {"A", "B", "C"}) {
        const std::string marks = done({"marks", first, "--performance", label, "--json"});
        CHECK(marks.find("phrase") != std::string::npos);
        CHECK(done({"marks", second, "--performance", label, "--json"}) == marks);
        CHECK(std::filesystem::exists(given.folder / "heard" / (label + ".json")));
    }
    const std::string some = done({"listen", first, "--performance", "C", "--performance", "A"});
    CHECK(lines(some).size() == 2);
    CHECK(some.starts_with("C: "));
    CHECK(lines(done({"listen", first, "--performance", "C", "--performance", "A", "--performance", "C"}))
              .size() == 2);
    CHECK(luftpause({"listen", first, "--performance", "C", "--all"}).status == 2);
}

TEST_CASE("listen says how to ask for several recordings when it is asked in another way") {
    const Folder folder;
    for (const Arguments& wrong : std::vector<Arguments>{{"a.wav", "b.wav"},
                                                         {"a.wav", "b.wav", "--out", "c.json"},
                                                         {"a.wav", "--out", "c.json", "--into", "heard"},
                                                         {"a.wav", "b.luft", "--into", "heard"},
                                                         {"a.wav", "--all"},
                                                         {"a.wav", "--into", "heard", "--jobs", "0"}}) {
        Arguments arguments{"listen"};
        for (const std::string& word : wrong)
            arguments.push_back(word.find('.') == std::string::npos ? word : std::string(folder / word));
        const Outcome outcome = luftpause(arguments);
        INFO(outcome.err);
        CHECK(outcome.status == 2);
        CHECK(lines(outcome.err).size() == 1);
        CHECK(folder.names().empty());
    }
}
