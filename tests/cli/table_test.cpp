// Tables and paragraphs for a terminal.
#include "cli/table.h"
#include "files/formats.h"

#include <catch2/catch.hpp>

using namespace luft::cli;
using luft::files::file_stem;

TEST_CASE("Columns line up, also where letters take several bytes") {
    Table table({{"ID", Align::right}, {"WHO"}, {"WHAT"}});
    table.add({"1", "Zoë", "sings"});
    table.add({"12", "Adam", "hums"});
    CHECK(table.text() == "ID  WHO   WHAT\n"
                          " 1  Zoë   sings\n"
                          "12  Adam  hums\n");
}

TEST_CASE("A cell can't steer the terminal or break its line") {
    Table table({{"A"}, {"B"}});
    table.add({"x\033[2J", "two\nlines"});
    CHECK(table.text() == "A      B\nx [2J  two lines\n");
}

TEST_CASE("Paragraphs are broken between words and keep their own line ends") {
    CHECK(paragraph("one two three four five six", 2, 22) == "  one two three four\n  five six\n");
    CHECK(paragraph("a\n\nb", 2) == "  a\n\n  b\n");
    CHECK(paragraph("", 2).empty());
}

TEST_CASE("A label becomes a file name that leads nowhere else") {
    CHECK(file_stem("mara-live_2") == "mara-live_2");
    CHECK(file_stem("../../etc/passwd") == "------etc-passwd");
    CHECK(file_stem("") == "performance");
    CHECK(file_stem(".hidden") == "-hidden");
    CHECK(file_stem("Zoë live") == "Zoë-live");
    CHECK(file_stem("gpj.\xE2\x80\xAE"
                    "exe") == "gpj-exe");
    CHECK(file_stem("a\x1B[2J\xC2\x9B") == "a-2J");
    CHECK(file_stem(std::string(79, 'a') + "éé") == std::string(79, 'a'));
    CHECK(file_stem(std::string(300, 'a')).size() == 80);
}
