// A quote of another performance in every file that says what is played: the other recording is named as its
// source, at its exact place.
#include "export/captions.h"
#include "export/chapters.h"
#include "export/cue_csv.h"
#include "export/cue_html.h"
#include "export/cue_json.h"
#include "export/cue_pdf.h"
#include "export/description.h"
#include "export/edit_material.h"
#include "export/edl.h"
#include "export/otio.h"
#include "export/teleprompter.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/pdf_words.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <map>
#include <set>
#include <sstream>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;
using namespace luft::test;
using nlohmann::json;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);)
        lines.push_back(line);
    return lines;
}

std::vector<std::string> words_of(const std::string& line) {
    std::istringstream in(line);
    std::vector<std::string> words;
    for (std::string word; in >> word;)
        words.push_back(word);
    return words;
}

json clips(const script::Source& source, std::size_t track) {
    return json::parse(otio(source, script::lay_out(source)))["tracks"]["children"].at(track)["children"];
}

constexpr std::size_t kQuote = 3; ///< its segment: after opening, music and talk

} // namespace

TEST_CASE("in the edit list a quote is an event of the other recording's own reel and clip") {
    const auto source = quoting_source(25, 1);
    const auto lines = lines_of(edl(source, script::lay_out(source)));
    std::size_t at = 0;
    while (at < lines.size() && (words_of(lines[at]).size() != 8 || words_of(lines[at])[1] != "B"))
        ++at;
    REQUIRE(at + 3 < lines.size());
    const auto event = words_of(lines[at]);
    CHECK(event[2] == "AA/V");
    CHECK(event[4] == "00:00:10:00"); // of its own recording
    CHECK(event[5] == "00:00:13:00");
    CHECK(words_of(lines[at + 1]) == std::vector<std::string>{"M2", "B", "012.5", "00:00:10:00"});
    CHECK(lines[at + 2] == "* FROM CLIP NAME: brandt 98.mkv");
    CHECK(lines[at + 3] == "* COMMENT: Compare at half speed: B (Ilse Brandt)");
    CHECK(words_of(lines[at + 4])[1] == "A"); // the replay, on the script's own reel again
}

TEST_CASE("no two recordings share a reel, however alike their labels are") {
    auto source = quoting_source(25, 1);
    const auto reels = [&](const char* own, const char* other) {
        source.performance.label = own;
        source.others[0].performance.label = other;
        std::set<std::string> all;
        for (const auto& line : lines_of(edl(source, script::lay_out(source))))
            if (const auto event = words_of(line); event.size() == 8 && line[0] >= '0' && line[0] <= '9')
                all.insert(event[1]);
        return all;
    };
    CHECK(reels("live in Köln 1", "live in Köln 2") == std::set<std::string>{"BL", "LIVEINKL", "LIVEINK2"});
    CHECK(reels("声", "歌") == std::set<std::string>{"BL", "REEL", "REEL2"});
    CHECK(reels("a", "A") == std::set<std::string>{"BL", "A", "A2"});
}

TEST_CASE("where one of the two has no picture, every track of the edit is still without a gap") {
    for (const bool own : {true, false})
        for (const bool other : {true, false}) {
            auto source = quoting_source(30000, 1001);
            source.performance.facts.has_video = own;
            source.others[0].performance.facts.has_video = other;
            const auto sheet = script::lay_out(source);
            INFO(own << other);
            std::map<std::string, std::string> at;
            for (const auto& line : lines_of(edl(source, sheet))) {
                const auto event = words_of(line);
                if (event.size() != 8 || line[0] < '0' || line[0] > '9') continue;
                for (const std::string track : {"V", "AA"}) {
                    if (event[2] != track && event[2] != "AA/V") continue;
                    CHECK(event[6] == (at.contains(track) ? at[track] : "00:00:00;00"));
                    at[track] = event[7];
                }
            }
            CHECK(at.contains("V") == (own || other));
            CHECK((!at.contains("V") || at["V"] == at["AA"]));

            const json tracks = json::parse(otio(source, sheet))["tracks"]["children"];
            REQUIRE(tracks.size() == (own || other ? 2 : 1));
            if (tracks.size() < 2) continue;
            const json& video = tracks[0]["children"];
            REQUIRE(video.size() == sheet.segments.size());
            for (std::size_t i = 0; i < video.size(); ++i) {
                const bool has = i == kQuote ? other : own;
                CHECK(video[i]["OTIO_SCHEMA"] == (has ? "Clip.1" : "Gap.1"));
                CHECK(video[i]["source_range"]["duration"] ==
                      tracks[1]["children"][i]["source_range"]["duration"]);
            }
        }
}

TEST_CASE("in the timeline a quote refers to the other recording, whose length is told at its own rate") {
    const auto source = quoting_source(30000, 1001); // the other runs at 24000/1001
    const auto sheet = script::lay_out(source);
    for (const std::size_t track : {0, 1}) {
        const json quote = clips(source, track).at(kQuote);
        CHECK(quote["metadata"]["luftpause"] == json{{"kind", "quote"},
                                                     {"stop", 1},
                                                     {"performance", "B"},
                                                     {"performer", "Ilse Brandt"},
                                                     {"source", "radio tape of 1998"},
                                                     {"permission", "mail of 9 June"}});
        const json& media = quote["media_reference"];
        CHECK(media["target_url"] == "tapes/brandt%2098.mkv");
        CHECK(media["available_range"]["duration"]["rate"] == 24000.0 / 1001);
        CHECK(media["available_range"]["duration"]["value"] == 959.0); // 40 s x 23.976 = 959.04
        const json& start = quote["source_range"]["start_time"];
        CHECK(start["rate"] == 30000.0 / 1001);
        CHECK(start["value"] == 300.0); // 10 s x 29.97 = 299.7
        CHECK(quote["effects"][0]["time_scalar"] == 0.5);
        CHECK(clips(source, track).at(kQuote + 1)["media_reference"]["target_url"] != media["target_url"]);
    }
}

TEST_CASE("the cue sheet's table gains the performance's label where another one is quoted, and only there") {
    const auto source = quoting_source(25, 1);
    const Folder folder;
    write_all(folder / "cues.csv", cue_csv(source, script::lay_out(source)));
    const json rows = json::parse(
        run("python3 -c 'import csv,json,sys; print(json.dumps(list(csv.DictReader(open(sys.argv[1], "
            "newline=\"\", encoding=\"utf-8\"), strict=True))))' " +
            quoted(folder / "cues.csv")));
    const json& quote = rows.at(kQuote);
    CHECK(quote["kind"] == "quote");
    CHECK(quote["performance"] == "B");
    CHECK(quote["media_in_s"] == "10.000000");
    CHECK(quote["media_out_s"] == "13.000000");
    CHECK(quote["speed"] == "0.500");
    CHECK(rows.at(kQuote + 1)["performance"] == "A");
    CHECK(cue_csv(cue_source(), script::lay_out(cue_source())).find("performance") == std::string::npos);
}

TEST_CASE("the cue sheet's JSON tells whose recording each segment is, and how much of another is quoted") {
    const auto source = quoting_source(25, 1);
    const json cues = json::parse(cue_json(source, script::lay_out(source)));
    const json& quote = cues["segments"].at(kQuote);
    CHECK(quote["kind"] == "quote");
    CHECK(quote["performance"] == "B");
    CHECK(quote["media"]["in"]["exact"] == "10");
    CHECK(quote["programme"]["out"]["frame"].get<int>() - quote["programme"]["in"]["frame"].get<int>() ==
          150);
    CHECK(cues["segments"].at(kQuote - 1)["performance"] == "A");
    REQUIRE(cues["others"].size() == 1);
    const json& other = cues["others"][0];
    CHECK(other["label"] == "B");
    CHECK(other["permission"] == "mail of 9 June");
    CHECK(other["quoted"]["exact"] == "6");
    CHECK(other["quoted_once"]["exact"] == "3");
    CHECK(other["quoted_share"].get<double>() == Approx(3.0 / 40));
}

TEST_CASE("the page and the print name the other performance in figures, cues and credits") {
    const auto source = quoting_source(25, 1);
    const auto sheet = script::lay_out(source);
    const std::string html = cue_html(source, sheet);
    for (const char* part : {"To compare", "8 % of B", "Compare at half speed: B (Ilse Brandt)", "B 0:10.0",
                             "another performance", "Compared with", "radio tape of 1998", "mail of 9 June"})
        CHECK(html.find(part) != std::string::npos);
    const Folder folder;
    write_all(folder / "cues.html", html);
    run("xmllint --html --noout " + quoted(folder / "cues.html") + " 2>/dev/null");
    cue_pdf(source, sheet, folder / "cues.pdf", {});
    std::string print;
    for (const auto& word : pdf_words(folder / "cues.pdf"))
        print += word.text + " ";
    for (const char* part : {"To compare", "8 % of B", "Compare at half speed: B (Ilse Brandt)", "B 0:10.0",
                             "to 0:13.0", "Compared with", "mail of 9 June"}) {
        INFO(part);
        CHECK(print.find(part) != std::string::npos);
    }
}

TEST_CASE("the description credits the other performance, with its permission or the lack of one") {
    auto source = quoting_source(25, 1);
    const std::string text = description(source, script::lay_out(source));
    CHECK(text.find("\nCompared with: Ilse Brandt\nRecording: radio tape of 1998\n"
                    "Permission: mail of 9 June\n") != std::string::npos);
    source.others[0].performance.performer.clear();
    source.others[0].performance.permission.clear();
    CHECK(description(source, script::lay_out(source))
              .find("\nCompared with: B\nRecording: radio tape of 1998\nPermission: none noted. Settle") !=
          std::string::npos);
}

TEST_CASE("a quote has no chapter and no caption of its own, and the words to speak come after its name") {
    auto source = quoting_source(25, 1);
    source.items[1].replay.reset();
    source.items.resize(2);
    source.items.push_back(script::testing::item(9, project::ScriptItemKind::closing, 12, "Thank you."));
    const auto sheet = script::lay_out(source);
    for (const Chapter& c : chapters(source, sheet))
        CHECK(c.title.find("Compare") == std::string::npos);
    for (const Caption& c : captions(sheet))
        CHECK((c.end <= sheet.segments[kQuote].programme_start ||
               c.start >= sheet.segments[kQuote].programme_end));
    CHECK(teleprompter(source, sheet).find("Plays B (Ilse Brandt) for 6.0 s, up to 0:13.0</p>") !=
          std::string::npos);
}
