// A moment that is compared with another performance, from the command line to the files.
#include "cli/desk.h"
#include "tools/files.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::cli::test;
using namespace luft::test;

namespace {

/// The project with a second performance, B: the same recording under another name.
class TwoPerformances : public Desk {
  public:
    TwoPerformances() {
        std::filesystem::copy_file(folder / "sung.wav", folder / "other.wav");
        done({"add", folder / "a.luft", folder / "other.wav", "--label", "B", "--performer", "Ilse Brandt",
              "--permission", "mail of 9 June", "--no-listen"});
    }
};

} // namespace

TEST_CASE("A moment is set beside a span of another performance, shown so, and taken apart again") {
    const TwoPerformances desk;
    desk("moment", {"add", "--performance", "A", "--from", "1", "--to", "3", "--shade", "onset:glottal",
                    "--beside", "B@0:02-0:04.5"});
    const auto list = [&] {
        return desk.json("moment", {"list", "--performance", "A", "--state", "kept"})[0];
    };
    CHECK(list()["beside"] == nlohmann::json{{"performance", "B"}, {"start_s", 2.0}, {"end_s", 4.5}});
    CHECK(desk("moment", {"list", "--performance", "A"}).find("      Beside B 0:02.0-0:04.5\n") !=
          std::string::npos);
    const std::string id = id_of(list());
    desk("moment", {"edit", id, "--remark", "Set, not hit."});
    CHECK(list()["beside"]["end_s"] == 4.5); // what isn't given stays
    desk("moment", {"edit", id, "--beside", "B@3-4"});
    CHECK(list()["beside"]["start_s"] == 3.0);
    desk("moment", {"edit", id, "--no-beside"});
    CHECK(list()["beside"].is_null());
}

TEST_CASE("A drafted stop quotes the other performance, and the files of the programme say so") {
    const TwoPerformances desk;
    desk("moment", {"add", "--performance", "A", "--from", "1", "--to", "3", "--shade", "onset:glottal",
                    "--beside", "B@0:02-0:04"});
    desk("script", {"draft", "--performance", "A"});
    const auto stop = [&] { return desk.json("script", {"show", "--performance", "A"})["items"][1]; };
    CHECK(stop()["kind"] == "stop");
    CHECK(stop()["quote"] == nlohmann::json{{"performance", "B"}, {"start_s", 1.5}, {"end_s", 4.5}});
    CHECK(stop()["text"].get<std::string>().find("Ilse Brandt") != std::string::npos);
    CHECK(desk("script", {"show", "--performance", "A"}).find(", quotes B 0:01.5-0:04.5 at ") !=
          std::string::npos);
    const std::string cues = desk("cues", {"--performance", "A"});
    CHECK(cues.find("B (Ilse Brandt), 0:01.5-0:04.5 (") != std::string::npos);
    CHECK(cues.find("Compared with B (Ilse Brandt): ") != std::string::npos);
    CHECK(desk("export", {"--performance", "A", "--as", "description"}).find("mail of 9 June") !=
          std::string::npos);

    const std::string id = id_of(stop());
    desk("script", {"edit", id, "--quote", "B@1-2", "--speed", "0.75"});
    CHECK(stop()["quote"]["end_s"] == 2.0);
    desk("script", {"edit", id, "--no-quote"});
    CHECK(stop()["quote"].is_null());
    CHECK(desk("cues", {"--performance", "A"}).find("Brandt), 0:") == std::string::npos);
    desk("undo");
    CHECK(stop()["quote"]["end_s"] == 2.0);
    desk("script", {"add", "--performance", "A", "--kind", "stop", "--at", "3", "--text",
                    "Hear the other one.", "--quote", "B@1-2"});
    const nlohmann::json sheet = desk.json("cues", {"--performance", "A"});
    int quotes = 0;
    for (const auto& segment : sheet["segments"])
        quotes += segment["kind"] == "quote" && segment["performance"] == "B" ? 1 : 0;
    CHECK(quotes == 2);
}

TEST_CASE("Removing a performance says what quoted it, and the next draft leads to it no longer") {
    const TwoPerformances desk;
    desk("moment", {"add", "--performance", "A", "--from", "1", "--to", "3", "--shade", "onset:glottal",
                    "--beside", "B@0:02-0:04"});
    desk("script", {"draft", "--performance", "A"});
    desk("script", {"add", "--performance", "A", "--kind", "stop", "--at", "3", "--text",
                    "Hear Ilse Brandt once more.", "--quote", "B@1-2"});
    const auto items = [&] { return desk.json("script", {"show", "--performance", "A"})["items"]; };
    std::string own;
    for (const auto& item : items())
        if (item["kind"] == "stop" && item["own_words"]) own = id_of(item);
    REQUIRE(!own.empty());
    const std::string said = desk("performance", {"remove", "B"});
    CHECK(said.find("\n2 stops and 1 moment lost what they quoted of it.\n") != std::string::npos);
    CHECK(said.find("draft --performance 'A'\n") != std::string::npos);
    CHECK(said.find("see whether they lead to it: stop " + own + " at 0:03.0.\n") != std::string::npos);
    const auto leading = [&] {
        std::vector<std::string> ids;
        for (const auto& item : items()) {
            CHECK(item["quote"].is_null());
            if (item["text"].get<std::string>().find("Ilse Brandt") != std::string::npos)
                ids.push_back(id_of(item));
        }
        return ids;
    };
    CHECK(leading().size() == 3); // the opening, the drafted stop, the own words
    desk("script", {"draft", "--performance", "A"});
    CHECK(leading() == std::vector{own});
    desk("undo");
    desk("undo"); // with B come its quotes
    CHECK(desk("performance", {"list"}).find("Ilse Brandt") != std::string::npos);
}

TEST_CASE("Removing a performance that nothing quotes says no more than that") {
    const TwoPerformances desk;
    CHECK(lines(desk("performance", {"remove", "B"})).size() == 1);
}

TEST_CASE("A quote that makes no sense is refused in one line") {
    const TwoPerformances desk;
    const std::vector<std::string> start = {"add", "--performance", "A", "--from",
                                            "1",   "--to",          "2", "--beside"};
    const auto tried = [&](const std::string& quote) {
        auto arguments = start;
        arguments.push_back(quote);
        const auto outcome = desk.tried("moment", arguments);
        INFO(quote << ": " << outcome.err);
        CHECK(lines(outcome.err).size() == 1);
        return outcome.status;
    };
    for (const char* no_quote : {"B", "B@1", "@1-2", "B@2-1", "B@x-y"})
        CHECK(tried(no_quote) == 2);
    for (const char* nowhere : {"C@1-2", "A@1-2", "B@5:00-5:01"})
        CHECK(tried(nowhere) == 1);
}
