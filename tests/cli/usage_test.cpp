// The command line itself: help with an example everywhere, wrong use with status 2.
#include "cli/desk.h"
#include "files/comparison_formats.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>

using namespace luft::cli::test;
using namespace luft::test;

namespace {

const std::vector<std::vector<std::string>> kVerbs = {
    {"new"},
    {"piece"},
    {"add"},
    {"performance"},
    {"performance", "list"},
    {"performance", "notes"},
    {"performance", "relink"},
    {"performance", "remove"},
    {"listen"},
    {"marks"},
    {"mark"},
    {"mark", "add"},
    {"mark", "keep"},
    {"mark", "drop"},
    {"mark", "move"},
    {"mark", "split"},
    {"mark", "join"},
    {"mark", "kind"},
    {"moment"},
    {"moment", "list"},
    {"moment", "propose"},
    {"moment", "add"},
    {"moment", "edit"},
    {"moment", "keep"},
    {"moment", "drop"},
    {"vocabulary"},
    {"vocabulary", "list"},
    {"vocabulary", "add-facet"},
    {"vocabulary", "add-shade"},
    {"vocabulary", "drill"},
    {"profile"},
    {"beside"},
    {"script"},
    {"script", "draft"},
    {"script", "show"},
    {"script", "add"},
    {"script", "edit"},
    {"script", "remove"},
    {"script", "set"},
    {"script", "mend"},
    {"cues"},
    {"compare"},
    {"export"},
    {"undo"},
    {"redo"},
    {"check"},
};

} // namespace

TEST_CASE("Every verb has help, with an example of itself") {
    for (std::vector<std::string> verb : kVerbs) {
        const std::string action = verb.size() > 1 ? " " + verb.back() : "";
        const std::string line = "luftpause " + verb.front() + " ";
        verb.push_back("--help");
        const std::string help = done(verb);
        INFO(help);
        const std::size_t example = help.find("Example:");
        REQUIRE(example != std::string::npos);
        CHECK(help.find("Usage: " + line) != std::string::npos);
        CHECK(help.find(line, example) != std::string::npos);
        CHECK(help.find(action, example) != std::string::npos);
    }
}

TEST_CASE("The page on exported files has a row for every format, and no other") {
    const std::string page = luft::test::read_all(LUFT_CLI_TESTS "/../../docs/files.md");
    std::size_t rows = 0;
    for (std::size_t at = 0; (at = page.find("\n| `", at)) != std::string::npos; ++at)
        ++rows;
    CHECK(rows == luft::files::formats().size() + luft::files::comparison_formats().size());
    for (const auto& format : luft::files::comparison_formats())
        CHECK(page.find("\n| `" + std::string(format.key) + "` | `" + std::string(format.ending)) !=
              std::string::npos);
    for (const auto& format : luft::files::formats())
        CHECK(page.find("\n| `" + std::string(format.key) + "` | `" + std::string(format.ending)) !=
              std::string::npos);
}

TEST_CASE("The program's own help names each verb, and its version is a line") {
    const std::string help = done({"--help"});
    for (const auto& verb : kVerbs)
        CHECK(help.find("\n  " + verb.front()) != std::string::npos);
    CHECK(done({"--version"}).starts_with("luftpause 1."));
}

TEST_CASE("Wrong use has status 2 and one line that says where help is") {
    const Folder folder;
    const std::string project = folder / "a.luft";
    done({"new", project, "--title", "Three lines"});
    const std::vector<std::vector<std::string>> wrong = {
        {},
        {"sing"},
        {"new"},
        {"new", folder / "b.luft"},
        {"new", folder / "b.luft", "--title", "\xFF\xFE"},
        {"marks", project, "--kind", "yodel"},
        {"marks", project, "--from", "soon"},
        {"marks", project, "--from", "-3"},
        {"marks", project, "--from", "1:75"},
        {"marks", project, "--sure", "nan"},
        {"marks", project, "--sure", "1.5"},
        {"mark", project},
        {"mark", project, "keep"},
        {"mark", project, "keep", "first"},
        {"mark", "keep", "1"},
        {"mark", project, "join", "1"},
        {"script", project, "set", "--wpm", "inf"},
        {"script", project, "set", "--frame-rate", "25/0"},
        {"profile", project, "--as", "poem"},
        {"undo", project, "--steps", "0"},
    };
    for (const auto& arguments : wrong) {
        const Outcome outcome = luftpause(arguments);
        INFO(Catch::rangeToString(arguments) << ": " << outcome.err);
        CHECK(outcome.status == 2);
        CHECK(outcome.out.empty());
        REQUIRE(lines(outcome.err).size() == 1);
        CHECK(outcome.err.starts_with("luftpause: "));
        CHECK(outcome.err.find("--help'.") != std::string::npos);
    }
    CHECK(folder.names() == std::vector<std::string>{"a.luft"});
}

TEST_CASE("Nothing that goes to a file or a pipe holds terminal control characters") {
    CHECK(done({"--help"}).find('\033') == std::string::npos);
    const Folder folder;
    done({"new", folder / "a.luft", "--title", "Red \033[31m title"});
    CHECK(done({"piece", folder / "a.luft"}).find('\033') == std::string::npos);
}

TEST_CASE("The progress line is off the terminal before the result is on it") {
    // `script` of Debian's bsdutils runs it on a terminal of its own; where none can be had there is nothing
    // to see.
    if (run("script", {"-qec", "true", "/dev/null"}).status != 0) {
        WARN("No terminal can be had here: not checked.");
        return;
    }
    const Desk desk;
    const Outcome said =
        run("script",
            {"-qec", std::string(LUFT_PROGRAM) + " check " + (desk.folder / "a.luft").string(), "/dev/null"});
    CHECK(said.status == 0);
    CHECK(said.out.find("checking") != std::string::npos);
    CHECK(said.out.find("\r\033[KSound") != std::string::npos);
}
