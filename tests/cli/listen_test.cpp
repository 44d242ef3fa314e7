// luftpause listen on a bare recording: the JSON of the analysis, and what it says about what was sung.
#include "cli/program.h"
#include "scenes/sung.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cmath>

using namespace luft;
using namespace luft::cli::test;
using namespace luft::test;

TEST_CASE("listen prints JSON with every key of its schema, as Python's own reader sees it") {
    const Folder folder;
    luft::scenes::write_sung(luft::scenes::three_lines(), folder / "sung.wav");
    done({"listen", folder / "sung.wav", "--out", folder / "sung.json"});
    const Outcome read = run("python3", {LUFT_CLI_TESTS "/analysis_keys.py", folder / "sung.json"});
    INFO(read.err);
    CHECK(read.status == 0);

    // The reader can fail: a 0 where nothing is to be had, a key that isn't there, a list cut short.
    auto value = nlohmann::json::parse(read_all(folder / "sung.json"));
    const auto refused = [&](const nlohmann::json& broken) {
        write_all(folder / "broken.json", broken.dump());
        return run("python3", {LUFT_CLI_TESTS "/analysis_keys.py", folder / "broken.json"}).status != 0;
    };
    auto zero = value;
    zero["curves"]["f0_hz"][0] = 0;
    CHECK(refused(zero));
    auto missing = value;
    missing["loudness"].erase("range_lu");
    CHECK(refused(missing));
    auto shorter = value;
    shorter["curves"]["ring_db"].erase(0);
    CHECK(refused(shorter));
}

TEST_CASE("listen finds the three lines and the breaths between them where they were sung") {
    const Folder folder;
    const singer::Truth truth = luft::scenes::write_sung(luft::scenes::three_lines(), folder / "sung.wav");
    const auto value = nlohmann::json::parse(done({"listen", folder / "sung.wav", "--voice", "alone"}));

    CHECK(value["setting"] == "alone");
    CHECK(value["media"]["sample_rate_hz"] == 44100);
    CHECK(value["media"]["channels"] == 1);
    CHECK(value["media"]["has_video"] == false);
    CHECK(value["media"]["frame_rate"].is_null());
    REQUIRE(value["phrases"].size() == truth.phrases.size());
    for (std::size_t i = 0; i < truth.phrases.size(); ++i)
        CHECK(std::abs(value["phrases"][i]["end_s"].get<double>() - truth.phrases[i].span.end.value()) < 0.3);
    REQUIRE(value["notes"].size() == truth.notes.size());
    for (std::size_t i = 0; i < truth.notes.size(); ++i)
        CHECK(std::abs(value["notes"][i]["midi"].get<double>() - truth.notes[i].pitch.value()) < 0.3);
    std::size_t heard = 0;
    for (const auto& breath : value["breaths"])
        for (const auto& sung : truth.breaths)
            if (breath["start_s"].get<double>() < sung.span.end.value() &&
                breath["end_s"].get<double>() > sung.span.start.value())
                ++heard;
    CHECK(heard == truth.breaths.size());
}

TEST_CASE("listen prints the same to the terminal as into a file") {
    const Folder folder;
    luft::scenes::write_sung(luft::scenes::three_lines(), folder / "sung.wav");
    const std::string printed = done({"listen", folder / "sung.wav"});
    CHECK(done({"listen", folder / "sung.wav", "--out", folder / "sung.json"}).empty());
    CHECK(printed == read_all(folder / "sung.json"));
}

TEST_CASE("listen never writes over the recording") {
    const Folder folder;
    luft::scenes::write_sung(luft::scenes::three_lines(), folder / "sung.wav");
    const std::string before = read_all(folder / "sung.wav");
    const Outcome outcome = luftpause({"listen", folder / "sung.wav", "--out", folder / "./sung.wav"});
    CHECK(outcome.status == 1);
    CHECK(lines(outcome.err).size() == 1);
    CHECK(read_all(folder / "sung.wav") == before);
}

TEST_CASE("Ctrl+C ends listening with status 130, one line and nothing written") {
    const Folder folder;
    luft::scenes::write_sung(luft::scenes::three_lines(20), folder / "long.wav");
    const Outcome outcome = interrupted({"listen", folder / "long.wav", "--out", folder / "long.json"}, 300);
    CHECK(outcome.status == 130);
    CHECK(outcome.out.empty());
    CHECK(outcome.err == "luftpause: Stopped.\n");
    CHECK(folder.names() == std::vector<std::string>{"long.wav"});
}
