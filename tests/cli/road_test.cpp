// The straight road, from a recording to a timed cue sheet, through the built program.
#include "cli/desk.h"
#include "tools/files.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <set>

using namespace luft;
using namespace luft::cli::test;
using namespace luft::test;

TEST_CASE("From a recording to a timed cue sheet, verb by verb") {
    const Desk desk;
    CHECK(desk.added.find("Added 'A'") != std::string::npos);
    CHECK(desk.added.find("3 phrases") != std::string::npos);
    CHECK(desk.marks("breath").size() >= desk.truth.breaths.size());

    // Two moments by hand, one of them with words that a draft must leave alone.
    desk("moment", {"add", "--from", "0:01", "--to", "0:03", "--shade", "breath:well-placed", "--verdict",
                    "strength", "--remark", "The breath is taken early and quietly."});
    desk("moment",
         {"add", "--from", "6", "--to", "8", "--shade", "onset:balanced", "--shade", "posture:aligned"});
    const auto moments = desk.json("moment", {"list", "--state", "kept"});
    REQUIRE(moments.size() == 2);
    CHECK(moments[1]["shades"] == nlohmann::json({"onset:balanced", "posture:aligned"}));

    CHECK(desk("script", {"draft"}).find("Drafted") != std::string::npos);
    const auto items = desk.json("script", {"show"})["items"];
    REQUIRE(items.size() >= 3); // an opening, something on the moments, a closing
    CHECK(items.front()["kind"] == "opening");
    CHECK(items.back()["kind"] == "closing");

    // Twenty words at 150 a minute take eight seconds, and playback is longer by just that.
    const auto before = desk.json("cues");
    desk("script",
         {"add", "--kind", "stop", "--at", "0:09.0", "--text",
          "One two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen "
          "sixteen seventeen eighteen nineteen twenty"});
    const auto after_it = desk.json("cues");
    const double longer =
        after_it["running_time"]["seconds"].get<double>() - before["running_time"]["seconds"].get<double>();
    CHECK(std::abs(longer - 8) <= 0.04 + 1e-9); // whole programme frames of 25 a second

    // The page says the same as the sheet for programs.
    const std::string text = desk("cues");
    CHECK(text.find("Running time") != std::string::npos);
    CHECK(text.find("nineteen twenty") != std::string::npos);
    CHECK(desk("check").starts_with("Sound"));
}

TEST_CASE("A draft never touches the coach's own words") {
    const Desk desk;
    desk("moment", {"add", "--from", "1", "--to", "3", "--shade", "onset:balanced"});
    desk("script", {"draft"});
    const auto items = desk.json("script", {"show"})["items"];
    REQUIRE(!items.empty());
    desk("script", {"edit", id_of(items[0]), "--text", "Mine, and mine alone."});
    desk("moment", {"add", "--from", "6", "--to", "8", "--shade", "onset:balanced"});
    desk("script", {"draft"});
    const auto again = desk.json("script", {"show"})["items"];
    CHECK(again.size() > items.size());
    CHECK(again[0]["text"] == "Mine, and mine alone.");
    CHECK(again[0]["own_words"] == true);
}

TEST_CASE("Every format is written into the folder, and readable by others' tools") {
    const Desk desk;
    desk("moment", {"add", "--from", "1", "--to", "3", "--shade", "onset:balanced", "--remark",
                    "Comma, \"quote\" and <tag> & more"});
    desk("script", {"draft"});
    const auto files = lines(desk("export", {"--all", desk.folder / "out"}));
    std::set<std::string> endings;
    for (const std::string& file : files)
        endings.insert(std::filesystem::path(file).extension());
    CHECK(endings == std::set<std::string>{".csv", ".edl", ".html", ".json", ".mp4", ".otio", ".pdf", ".png",
                                           ".srt", ".svg", ".txt", ".vtt"});
    for (const char* name : {"captions.srt", "edit.edl", "edit.otio", "teleprompter.html", "description.txt",
                             "handout.html", "sheet.pdf", "sheet/row-01.png", "guide.mp4"})
        CHECK(std::filesystem::exists(desk.folder / ("out/A-" + std::string(name))));
    for (const std::string& file : files) {
        INFO(file);
        CHECK(std::filesystem::file_size(file) > 20);
        if (file.ends_with(".json") || file.ends_with(".otio")) CHECK(nlohmann::json::accept(read_all(file)));
        if (file.ends_with(".html") || file.ends_with(".svg"))
            CHECK(run("xmllint", {"--noout", file}).status == 0);
        if (file.ends_with(".html")) { // HTML as the HTML Tidy project reads it: neither error nor warning
            const Outcome tidy = run("tidy", {"-quiet", "-errors", file});
            INFO(tidy.err);
            CHECK(tidy.status == 0);
            CHECK(tidy.err.empty());
        }
        if (file.ends_with(".csv")) {
            // Python's own CSV reader: every record as long as the header.
            const Outcome read =
                run("python3", {"-c",
                                "import csv,sys\n"
                                "rows=list(csv.reader(open(sys.argv[1],newline=''),strict=True))\n"
                                "assert len(rows)>1 and len({len(r) for r in rows})==1",
                                file});
            INFO(read.err);
            CHECK(read.status == 0);
        }
        if (file.ends_with(".vtt"))
            CHECK(
                run("ffprobe", {"-v", "error", "-show_entries", "stream=codec_name", "-of", "csv=p=0", file})
                    .out == "webvtt\n");
        if (file.ends_with(".srt"))
            CHECK(
                run("ffprobe", {"-v", "error", "-show_entries", "stream=codec_name", "-of", "csv=p=0", file})
                    .out == "subrip\n");
        if (file.ends_with(".pdf"))
            CHECK(run("pdftotext", {file, "-"}).out.find("Three lines") != std::string::npos);
        if (file.ends_with(".png")) CHECK(read_all(file).starts_with("\x89PNG\r\n"));
        if (file.ends_with(".mp4")) // the recording has no picture: the sheet is
            CHECK(run("ffprobe",
                      {"-v", "error", "-show_entries", "stream=width,height", "-of", "csv=p=0", file})
                      .out.find("1280,720") != std::string::npos);
        if (file.ends_with(".edl")) CHECK(read_all(file).starts_with("TITLE: Three lines\nFCM: "));
    }
    const Outcome read =
        run("python3", {LUFT_CLI_TESTS "/analysis_keys.py", desk.folder / "out/A-analysis.json"});
    INFO(read.err);
    CHECK(read.status == 0);
}

TEST_CASE("A format that is no text wants a name, and isn't written over the recording or the project") {
    const Desk desk;
    const Outcome unnamed = desk.tried("export", {"--as", "sheet-pdf"});
    CHECK(unnamed.status == 2);
    CHECK(unnamed.err.find("--out") != std::string::npos);
    const std::string before = read_all(desk.folder / "sung.wav");
    const Outcome over = desk.tried("export", {"--as", "sheet-pdf", "--out", desk.folder / "sung.wav"});
    CHECK(over.status == 1);
    CHECK(over.err.find("is what the result is made from") != std::string::npos);
    CHECK(read_all(desk.folder / "sung.wav") == before);
    desk("export", {"--as", "sheet-pictures", "--out", desk.folder / "rows"});
    CHECK(std::filesystem::exists(desk.folder / "rows/row-01.png"));
    CHECK(desk.tried("export", {"--as", "sheet-pictures", "--out", desk.folder / "sung.wav"}).status == 1);
    CHECK(read_all(desk.folder / "sung.wav") == before);
}

TEST_CASE("Stills of a recording without a picture are none, and that is said") {
    const Desk desk;
    const Outcome asked = desk.tried("export", {"--as", "stills", "--out", desk.folder / "stills"});
    CHECK(asked.status == 0);
    CHECK(asked.err.find("no moving picture") != std::string::npos);
    CHECK(!std::filesystem::exists(desk.folder / "stills"));
}

TEST_CASE("Without the recording at hand everything else is written, and what is missing is said") {
    const Desk desk;
    run("ffmpeg", {"-nostdin", "-v", "error", "-i", desk.folder / "sung.wav", "-f", "lavfi", "-i",
                   "testsrc=size=64x48:rate=25", "-shortest", desk.folder / "b.mp4"});
    desk("add", {desk.folder / "b.mp4", "--label", "B", "--no-listen"});
    desk("script", {"add", "--performance", "B", "--kind", "stop", "--at", "0:02", "--text", "Here."});
    desk("export", {"--as", "stills", "--performance", "B", "--out", desk.folder / "stills"});
    CHECK(std::filesystem::exists(desk.folder / "stills/stop-01.png"));
    std::filesystem::remove(desk.folder / "b.mp4");
    const Outcome all = desk.tried("export", {"--all", desk.folder / "out", "--performance", "B"});
    CHECK(all.status == 1);
    CHECK(all.err.find("b.mp4") != std::string::npos);
    CHECK(std::filesystem::exists(desk.folder / "out/B-marks.csv")); // comes after the stills
}

TEST_CASE("The guide movie is written as asked, and says what it is") {
    const Desk desk;
    desk("moment", {"add", "--from", "1", "--to", "3", "--shade", "onset:balanced"});
    desk("script", {"draft"});
    const std::string said =
        desk("guide", {"--out", desk.folder / "g.mkv", "--size", "320x180", "--slate", "--timecode"});
    CHECK(said.find("320 x 180, H.264 and AAC") != std::string::npos);
    CHECK(run("ffprobe", {"-v", "error", desk.folder / "g.mkv"}).status == 0);

    const std::string before = read_all(desk.folder / "sung.wav");
    for (const char* size : {"321x180", "320", "320x", "x180", "320x180x2", "0x0", "-2x4", "99999x2"})
        CHECK(desk.tried("guide", {"--out", desk.folder / "h.mkv", "--size", size}).status == 2);
    CHECK(desk.tried("guide", {}).status == 2);
    CHECK(desk.tried("guide", {"--out", desk.folder / "h.wav"}).status == 1);
    CHECK(desk.tried("guide", {"--out", desk.folder / "sung.wav"}).status == 1);
    CHECK(!std::filesystem::exists(desk.folder / "h.mkv"));
    CHECK(!std::filesystem::exists(desk.folder / "h.wav"));
    CHECK(read_all(desk.folder / "sung.wav") == before);
}

TEST_CASE("A label that looks like a path writes no file outside the folder") {
    const Desk desk;
    done({"add", desk.folder / "a.luft", desk.folder / "sung.wav", "--no-listen", "--label", "../out2/x"});
    const auto before = desk.folder.names();
    desk("export", {"--as", "marks-csv", "--performance", "../out2/x", "--out", desk.folder / "x.csv"});
    CHECK(desk.folder.names().size() == before.size() + 1);
    // Not listened to yet: the analysis can't be exported, and says why.
    const Outcome all = desk.tried("export", {"--all", desk.folder / "out", "--performance", "../out2/x"});
    CHECK(!std::filesystem::exists(desk.folder / "out2"));
    CHECK(all.status == 1);
    CHECK(all.err.find("listened to") != std::string::npos);
}
