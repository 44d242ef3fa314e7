// The cue sheet as CSV, read by Python's csv module (from Debian's python3), which knows nothing of us.
#include "export/csv.h"
#include "export/cue_csv.h"
#include "export/cue_material.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;
using namespace luft::test;

namespace {

nlohmann::json read_back(const std::string& csv) {
    const Folder folder;
    write_all(folder / "cues.csv", csv);
    return nlohmann::json::parse(run(
        "python3 -c 'import csv,json,sys; print(json.dumps(list(csv.reader(open(sys.argv[1], newline=\"\", "
        "encoding=\"utf-8\"), strict=True))))' " +
        quoted(folder / "cues.csv")));
}

} // namespace

TEST_CASE("a reader from outside gets every field back as it was") {
    const auto rows = read_back(csv_record({"plain", " spaced ", "a,b", "say \"hi\"", "two\r\nlines",
                                            "lf\nonly", "", kNasty, "שלום"}) +
                                csv_record({"next"}));
    REQUIRE(rows.size() == 2);
    CHECK(rows[0] == nlohmann::json{"plain", " spaced ", "a,b", "say \"hi\"", "two\r\nlines", "lf\nonly", "",
                                    kNasty, "שלום"});
    CHECK(rows[1] == nlohmann::json{"next"});
}

TEST_CASE("the cue sheet has one record a segment and aside, all of the same length") {
    const auto sheet = script::lay_out(cue_source());
    const auto rows = read_back(cue_csv(cue_source(), sheet));
    REQUIRE(rows.size() == 1 + sheet.segments.size() + sheet.asides.size());
    for (const auto& row : rows)
        CHECK(row.size() == 11);
    CHECK(rows[0][0] == "number");
    // Opening of 28 words at 150 a minute: 11.2 s, 336 frames at 29.97 (335.66 rounded up).
    CHECK(rows[1] == nlohmann::json{"1", "talk", "00:00:00;00", "00:00:11;06", "0.000000", "11.211200",
                                    "0.000000", "0.000000", "", "Opening", cue_source().items[0].text});
    CHECK(rows[3][10] == kNasty);
    CHECK(rows[4][1] == "replay");
    CHECK(rows[4][8] == "0.500");
    CHECK(rows[6][1] == "aside");
    CHECK(rows[6][6] == "25.992633"); // 26 s on the grid: frame 779 x 1001/30000
    CHECK(rows.back()[10] == "Thank you.");
}

TEST_CASE("records end with CR LF, and text that looks like a formula is made harmless") {
    const std::string csv = cue_csv(cue_source(), script::lay_out(cue_source()));
    CHECK(csv.ends_with("\r\n"));
    CHECK(read_back(csv)[7][10] == "'=1+1 is no formula here");
    for (const char* text : {"=1", "+1", "-1", "@x", "\t1", "\r1"})
        CHECK(csv_words(text) == "'" + std::string(text));
    CHECK(csv_words("\x01\x1B=1") == "'=1");
    CHECK(csv_words("＝1") == "'＝1");
    CHECK(csv_words("'=1") == "''=1");
    CHECK(csv_words("'tis") == "'tis");
    CHECK(csv_words("a=1") == "a=1");
    // Where the comma is the decimal sign, tables are parted at semicolons.
    CHECK(csv_words("a;=1;+2;b") == "a;'=1;'+2;b");
    CHECK(csv_words("a;'=1") == "a;''=1");
    CHECK(csv_words("a\n\n=1\t@b") == "a\n\n'=1\t'@b");
    CHECK(csv_words("\t=1") == "'\t'=1");
    CHECK(csv_words("a; b - c") == "a; b - c");
    CHECK(csv_words("").empty());
}
