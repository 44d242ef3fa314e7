// The teleprompter page, checked by libxml2's xmllint.
#include "export/cue_material.h"
#include "export/page_file.h"
#include "export/sung_lines.h"
#include "export/teleprompter.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

namespace {

std::string prompter(const script::Source& source) {
    return teleprompter(source, script::lay_out(source));
}

std::string words(const PageFile& page, int block) {
    return page.asked("string((//*[local-name()='p'][@class='words'])[" + std::to_string(block) + "])");
}

} // namespace

TEST_CASE("the teleprompter has one block for each talk and aside, in the programme's order") {
    const PageFile page(prompter(cue_source()));
    CHECK(page.count("section", "block") == 5);
    CHECK(page.count("span", "number") == 2); // the stops
    CHECK(words(page, 1).starts_with("Welcome."));
    CHECK(words(page, 3) == "Listen to the harbour bell.");
    CHECK(words(page, 4) == "=1+1 is no formula here");
    CHECK(words(page, 5) == "Thank you.");
    CHECK(page.asked("string((//*[@class='number'])[2])") == "2");
    CHECK(page.asked("string((//*[@class='before'])[1])") == "Plays 12 s, halts at 0:12.0");
}

TEST_CASE("no text brings markup into the teleprompter, and it needs nothing from elsewhere") {
    const PageFile page(prompter(cue_source()));
    CHECK(words(page, 2).find("<script>alert(1)</script>") != std::string::npos);
    CHECK(words(page, 2).find("שלום עולם") != std::string::npos);
    CHECK(page.asked("count(//*[local-name()='script' or local-name()='link' or local-name()='img'])") ==
          "0");
    CHECK(page.asked("count(//@src | //@href)") == "0");
    const std::string css = page.asked("string(//*[local-name()='style'])");
    CHECK(css.find("url(") == std::string::npos);
    CHECK(css.find("prefers-color-scheme: dark") != std::string::npos);
    CHECK(css.find("18mm") != std::string::npos); // capitals of 13 mm
}

TEST_CASE("a block says which line was sung last, where lines and phrases go together") {
    auto source = cue_source(); // three phrases, from 4, 15 and 34 s
    source.piece.words = "Lamps along the <water>\n\nTides that turn\nהביתה\n";
    CHECK(sung_line_before(source, Seconds(3)).empty());
    CHECK(sung_line_before(source, Seconds(12)) == "Lamps along the <water>");
    CHECK(sung_line_before(source, Seconds(50)) == "הביתה");
    const PageFile page(prompter(source));
    CHECK(page.asked("string((//*[@class='before'])[1])") ==
          "Plays 12 s, halts at 0:12.0: Lamps along the <water>");
    source.piece.words += "One line more than phrases";
    CHECK(sung_line_before(source, Seconds(12)).empty());
}

TEST_CASE("a script without words gives a teleprompter page that says so") {
    const PageFile page(prompter(script::Source{}));
    CHECK(page.asked("string(//*[@class='lead'])") == "There are no words in this script yet.");
}
