// The coach's hand on marks, moments and vocabulary, and the way back.
#include "cli/desk.h"
#include "tools/files.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace luft;
using namespace luft::cli::test;
using namespace luft::test;

namespace {

const nlohmann::json& row_of(const nlohmann::json& rows, const std::string& id) {
    const auto found =
        std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return id_of(row) == id; });
    REQUIRE(found != rows.end());
    return *found;
}

} // namespace

TEST_CASE("Marks are kept, dropped, moved and set by hand, and each edit is undone and done again") {
    const Desk desk;
    const auto breaths = desk.marks("breath");
    REQUIRE(breaths.size() >= 2);
    const std::string first = id_of(breaths[0]), second = id_of(breaths[1]);

    CHECK(desk("mark", {"keep", first, second}).find("Kept breath " + second) != std::string::npos);
    CHECK(row_of(desk.marks("breath"), second)["state"] == "kept");

    desk("mark", {"drop", first});
    CHECK(desk.marks("breath").size() == breaths.size() - 1);
    CHECK(desk.json("marks", {"--state", "dropped"})["marks"].size() == 1);
    CHECK(desk("undo").starts_with("Undone: "));
    CHECK(desk.marks("breath").size() == breaths.size());
    CHECK(desk("redo").starts_with("Done again: "));
    CHECK(desk.marks("breath").size() == breaths.size() - 1);

    desk("mark", {"move", second, "--at", "0:02.5"});
    CHECK(row_of(desk.marks("breath"), second)["start_s"] == 2.5);
    desk("mark", {"kind", second, "inferred"});
    CHECK(row_of(desk.marks("breath"), second)["evidence"] == "inferred");

    const std::string added =
        after(desk("mark", {"add", "--kind", "breath", "--from", "3", "--to", "3.4"}), "breath ");
    CHECK(row_of(desk.marks("breath"), added)["origin"] == "coach");
    CHECK(desk.tried("mark", {"keep", first, "99999"}).status == 1);
}

TEST_CASE("What the coach did to the marks outlives another listening") {
    const Desk desk;
    const auto breaths = desk.marks("breath");
    REQUIRE(breaths.size() >= 2);
    desk("mark", {"drop", id_of(breaths[0])});
    desk("mark", {"keep", id_of(breaths[1])});
    const std::string own =
        after(desk("mark", {"add", "--kind", "switch", "--at", "2", "--what", "head-to-chest"}), "switch ");
    done({"listen", desk.folder / "a.luft", "--voice", "alone"});
    const auto again = desk.marks("breath");
    CHECK(again.size() == breaths.size() - 1);
    CHECK(row_of(again, id_of(breaths[1]))["state"] == "kept");
    CHECK(row_of(desk.marks("switch"), own)["from"] == "head");
}

TEST_CASE("A phrase is split and the halves are joined again") {
    const Desk desk;
    const auto phrases = desk.marks("phrase");
    REQUIRE(phrases.size() == 3);
    desk("mark",
         {"split", id_of(phrases[0]), "--at", std::to_string(phrases[0]["start_s"].get<double>() + 1)});
    const auto halves = desk.marks("phrase");
    REQUIRE(halves.size() == 4);
    desk("mark", {"join", id_of(halves[0]), id_of(halves[1])});
    const auto joined = desk.marks("phrase");
    REQUIRE(joined.size() == 3);
    CHECK(joined[0]["start_s"] == phrases[0]["start_s"]);
    CHECK(joined[0]["end_s"] == phrases[0]["end_s"]);
}

TEST_CASE("Moments are edited and dropped; what doesn't exist is refused in one line") {
    const Desk desk;
    desk("moment", {"add", "--from", "1", "--to", "3", "--shade", "onset:glottal", "--verdict", "watch"});
    const std::string id = id_of(desk.json("moment", {"list", "--state", "kept"})[0]);
    desk("moment", {"edit", id, "--remark", "Hit, not met.", "--shade", "onset:balanced", "--to", "2"});
    const auto moment = row_of(desk.moments(), id);
    CHECK(moment["remark"] == "Hit, not met.");
    CHECK(moment["shades"] == nlohmann::json({"onset:balanced"}));
    CHECK(moment["end_s"] == 2.0);
    CHECK(moment["verdict"] == "watch");
    desk("moment", {"drop", id});
    CHECK(desk.json("moment", {"list", "--state", "kept"}).empty());

    for (const std::vector<std::string>& wrong : std::vector<std::vector<std::string>>{
             {"add", "--from", "1", "--to", "2", "--shade", "onset:sideways"},
             {"add", "--from", "1", "--to", "2", "--shade", "onset:glottal", "--drill", "no-such-drill"},
             {"add", "--from", "1:00:00", "--to", "1:00:01", "--shade", "onset:glottal"},
             {"keep", "99999"},
             {"edit", "99999", "--remark", "x"}}) {
        const Outcome outcome = desk.tried("moment", wrong);
        INFO(outcome.err);
        CHECK(outcome.status == 1);
        CHECK(lines(outcome.err).size() == 1);
    }
}

TEST_CASE("The coach's own facet, shade and drill are there for moments at once") {
    const Desk desk;
    desk("vocabulary", {"add-facet", "jaw", "--name", "Jaw"});
    desk("vocabulary", {"add-shade", "jaw:held", "--leaning", "watch"});
    desk("vocabulary", {"drill", "loose-jaw", "--name", "Loose jaw", "--trains", "jaw:held", "--step",
                        "Let the jaw hang.", "--step", "Sing five notes down."});
    desk("moment", {"add", "--from", "1", "--to", "2", "--shade", "jaw:held", "--drill", "loose-jaw"});
    const auto all = desk.json("vocabulary", {"list"});
    CHECK(all["facets"].back()["key"] == "jaw");
    CHECK(all["facets"].back()["own"] == true);
    CHECK(row_of(desk.moments(), id_of(desk.json("moment", {"list", "--state", "kept"})[0]))["drill"] ==
          "loose-jaw");
    CHECK(desk.tried("vocabulary", {"add-facet", "jaw"}).status == 1);
    CHECK(desk.tried("vocabulary", {"add-facet", "Jaw!"}).status == 1);
}

TEST_CASE("What doesn't fit in a script is mended from the command line, in edits that can be undone") {
    const Desk desk;
    const auto notes = desk.marks("note");
    REQUIRE(notes.size() > 3);
    const double inside = (notes[2]["start_s"].get<double>() + notes[2]["end_s"].get<double>()) / 2;
    desk("script", {"add", "--kind", "stop", "--at", std::to_string(inside), "--text", "Here."});
    const std::string before = desk("script", {"mend"});
    CHECK(before.find("cuts a sung note in two") != std::string::npos);
    CHECK(before.find("Mend it: Halt at") != std::string::npos);
    CHECK(desk.tried("script", {"mend", "--warning", "2"}).status == 1);
    CHECK(desk("script", {"mend", "--all"}).find("No warnings.") != std::string::npos);
    CHECK(desk("script", {"mend"}) == "No warnings.\n");
    desk("undo");
    CHECK(desk("script", {"mend"}) == before);
    CHECK(desk("script", {"mend", "--warning", "1"}).starts_with("Halt at"));
    CHECK(desk("script", {"mend"}) == "No warnings.\n");
}

TEST_CASE("Script settings and notes on piece and performance are kept") {
    const Desk desk;
    desk("script",
         {"set", "--wpm", "120", "--frame-rate", "30000/1001", "--share", "0.5", "--longest-quote", "0:20"});
    const auto settings = desk.json("script", {"set"});
    CHECK(settings["words_per_minute"] == 120);
    CHECK(settings["frame_rate"] == "30000/1001");
    CHECK(settings["most_quoted_share"] == 0.5);
    CHECK(settings["longest_quote_s"] == 20);
    desk("piece", {"--metre", "6/8"});
    test::write_all(desk.folder / "words.txt", "low moon a-bove the bay\nthe wind has gone a-way\nto me\n");
    CHECK_FALSE(desk.json("marks").contains("sung_words"));
    desk("piece", {"--words", (desk.folder / "words.txt").string()});
    const auto words = desk.json("marks")["sung_words"];
    REQUIRE(words.size() == 14);
    CHECK(words[2]["text"] == "a");
    CHECK(words[2]["joins"] == true);
    CHECK(words[3]["time_s"] >= words[2]["time_s"]);
    CHECK(words[3]["placed"] == false);
    CHECK(desk.json("piece")["metre"] == "6/8");
    CHECK(desk.json("piece")["key"] == "E minor");
    desk("performance", {"notes", "A", "--permission", "written, 3 May"});
    CHECK(desk.json("performance", {"list"})[0]["permission"] == "written, 3 May");
    CHECK(desk.json("performance", {"list"})[0]["performer"] == "Tam Orlin");
}

TEST_CASE("check names a recording that is gone, changed, or back under another name") {
    const Desk desk;
    const auto there = desk.folder.path() / "sung.wav";
    const std::string bytes = read_all(there);

    std::filesystem::remove(there);
    const Outcome gone = desk.tried("check");
    CHECK(gone.status == 1);
    CHECK(gone.out.find("'A'") != std::string::npos);

    std::string other = bytes;
    other[other.size() / 2] = static_cast<char>(other[other.size() / 2] ^ 0x55);
    write_all(there, other);
    CHECK(desk.tried("check").status == 1);
    CHECK(desk.tried("performance", {"relink", "A", there.string()}).status == 1);

    std::filesystem::remove(there);
    std::filesystem::create_directory(desk.folder.path() / "kept");
    write_all(desk.folder.path() / "kept/new-name.wav", bytes);
    desk("performance", {"relink", "A", desk.folder / "kept/new-name.wav"});
    CHECK(desk("check").starts_with("Sound"));
}

TEST_CASE("what can be read of a damaged project is saved into a new one, and what is missing is said") {
    const Desk desk;
    const std::string file = desk.folder / "a.luft", fresh = desk.folder / "saved.luft";
    CHECK(desk("check", {"--rescue", fresh}).ends_with("Nothing is missing.\n"));
    std::filesystem::remove(fresh);

    std::string bytes = read_all(file);
    constexpr std::size_t kPage = 4096;
    const std::size_t marks = bytes.find("\"midi\"") / kPage; // a page of marks
    bytes.replace(marks * kPage, kPage, std::string(kPage, '?'));
    write_all(file, bytes);
    CHECK(desk.tried("check").status == 1);
    const auto saved = desk.json("check", {"--rescue", fresh});
    CHECK(saved["saved"].get<std::string>().starts_with("1 performance, "));
    CHECK(saved["missing"][0].get<std::string>().find("may have been more marks") != std::string::npos);
    CHECK(desk.tried("check", {"--rescue", fresh}).status == 1); // there is something already
    done({"check", fresh, "--json"});
    CHECK(read_all(file) == bytes);
}

TEST_CASE("Two performances are compared: key, tempo, phrase against phrase, and the pin that was set") {
    const Desk desk;
    // The same singing, a fourth lower and slower, as another take of the piece.
    run("ffmpeg", {"-nostdin", "-v", "error", "-i", desk.folder / "sung.wav", "-af",
                   "asetrate=33039,aresample=44100", desk.folder / "low.wav"});
    desk("add", {desk.folder / "low.wav", "--label", "B", "--voice", "alone"});
    const std::string text = desk("compare", {"A", "B", "--no-harmony"});
    INFO(text);
    CHECK(text.find("B sings 5 semitones lower") != std::string::npos);
    CHECK(text.find("B runs at 7") != std::string::npos);
    CHECK(text.find("Phrase against phrase") != std::string::npos);
    const auto compared = desk.json("compare", {"B", "A"});
    CHECK(compared["semitones"] == 5);
    CHECK(compared["notes"].size() > 5);
    CHECK(compared["phrases"].size() >= 2);
    CHECK(compared["differences"].at(0)["kind"] == "key");
    CHECK(compared["differences"].at(0)["size"] == 5);
    CHECK(compared["differences"].at(1)["sentence"].get<std::string>().starts_with("A is "));

    // A pin is gone through, whatever it costs.
    const auto pinned = desk.json("compare", {"A", "B", "--pin", "4=4.9"});
    bool found = false;
    for (const auto& stretch : pinned["stretches"])
        for (const auto& knot : stretch["knots_s"])
            found = found || (knot[0] == 4.0 && knot[1] == 4.9);
    CHECK(found);
    CHECK(desk.tried("compare", {"A", "A"}).status == 1);

    // As a page and as a PDF, and beside all the other files.
    const std::string page = desk("compare", {"A", "B", "--as", "html"});
    CHECK(page.find("B against A") != std::string::npos);
    CHECK(desk.tried("compare", {"A", "B", "--as", "pdf"}).status == 2);
    desk("compare", {"A", "B", "--as", "pdf", "--out", desk.folder / "ab.pdf"});
    CHECK(run("pdftotext", {desk.folder / "ab.pdf", "-"}).out.find("B sings 5 semitones lower") !=
          std::string::npos);
    CHECK(desk.tried("compare", {"A", "B", "--as", "html", "--out", desk.folder / "sung.wav"}).status == 1);
    const std::string written = desk("export", {"--all", desk.folder / "out"});
    for (const char* name : {"A-B-compare.html", "A-B-compare.pdf", "A-B-compare.txt", "A-B-compare.json"}) {
        CHECK(written.find(name) != std::string::npos);
        CHECK(std::filesystem::file_size(desk.folder / ("out/" + std::string(name))) > 200);
    }

    // Profiles side by side.
    const std::string beside = desk("beside", {});
    CHECK(beside.find("Range") != std::string::npos);
    const auto turned = desk.json("beside", {"B", "A"});
    REQUIRE(turned["columns"].size() == 2);
    CHECK(turned["columns"][0]["label"] == "B");
    CHECK(desk("beside", {"A", "B", "--as", "html"}).find("Technique profiles of A and B") !=
          std::string::npos);
    CHECK(desk.tried("beside", {"A"}).status == 1);
    CHECK(desk.tried("beside", {"A", "A"}).status == 2);
    CHECK(desk.tried("beside", {"A", "C"}).status == 1);
    CHECK(desk.tried("compare", {"A"}).status == 2);
    CHECK(desk.tried("compare", {"A", "B", "--pin", "4"}).status == 2);
    CHECK(desk.tried("compare", {"A", "B", "--pin", "4=4.9", "--pin", "5=4.1"}).status == 1);

    // Without one of the recordings the singing alone has to do, and that is said.
    std::filesystem::remove(desk.folder / "low.wav");
    const auto without = desk.tried("export", {"--all", desk.folder / "without"});
    CHECK(without.err.find("'A' and 'B' were compared by the singing alone") != std::string::npos);
    CHECK(std::filesystem::exists(desk.folder / "without/A-B-compare.html"));
}
