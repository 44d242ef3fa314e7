// The teleprompter page, checked by libxml2's xmllint.
#include "export/cue_material.h"
#include "export/lead_in.h"
#include "export/page_file.h"
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
    CHECK(page.asked("string((//*[@class='before'])[1])") == "Plays for 12 s, halts at 0:12.0");
}

TEST_CASE("a halt right after a replay says what was heard again") {
    auto source = cue_source();
    source.items[3].at = source.items[1].at; // both stops at 12 s; the first replays 6 to 9 s at half speed
    const PageFile page(prompter(source));
    CHECK(page.asked("string((//*[@class='before'])[2])") == "Plays again for 6.0 s, up to 0:09.0");
}

TEST_CASE("under the words of a stop stands what is heard of another performance, whatever follows it") {
    auto source = cue_source(); // the stop's replay and 32 s of music come before the next words
    source.settings.frame_rate_num = 25;
    source.settings.frame_rate_den = 1;
    source.others = script::testing::compared({}).others;
    source.items[1].quote = project::Quote{{2}, {Seconds(10), Seconds(13)}};
    const auto sheet = script::lay_out(source);
    REQUIRE(sheet.segments.at(4).kind == script::SegmentKind::replay);
    const PageFile page(teleprompter(source, sheet));
    const auto under = [&](int block, int line) {
        return page.asked("string((//*[@class='block'])[" + std::to_string(block) + "]/*[@class='after'][" +
                          std::to_string(line) + "])");
    };
    CHECK(under(2, 2) == "Then B (Ilse Brandt) plays from 0:10.0 to 0:13.0 of its recording, for 6.0 s");
    for (const int other : {1, 3, 4, 5})
        CHECK(under(other, 2).empty());
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

TEST_CASE("a block says which words are sung last before the halt") {
    auto source = cue_source();
    const auto sung = [&](double at, const char* text, bool joins = false) {
        project::SungWord word;
        word.text = text;
        word.joins = joins;
        word.at = Seconds(at);
        source.sung_words.push_back(word);
    };
    for (const char* word : {"one", "two", "Lamps", "along", "the"})
        sung(4 + static_cast<double>(source.sung_words.size()), word);
    sung(9, "<wa", true);
    sung(10, "ter>");
    sung(11, "הביתה");
    sung(15, "af", true);
    sung(16, "ter");
    CHECK(lead_in(source, Seconds(4)).empty());
    CHECK(lead_in(source, Seconds(6.5)) == "one two Lamps");
    CHECK(lead_in(source, Seconds(9.5)) == "one two Lamps along the <wa-");
    CHECK(lead_in(source, Seconds(12)) == "two Lamps along the <water> הביתה");
    CHECK(lead_in(source, Seconds(50)) == "Lamps along the <water> הביתה after");
    const PageFile page(prompter(source));
    CHECK(page.asked("string((//*[@class='before'])[1])") ==
          "Plays for 12 s, halts at 0:12.0: two Lamps along the <water> הביתה");
}

TEST_CASE("a script without words gives a teleprompter page that says so") {
    const PageFile page(prompter(script::Source{}));
    CHECK(page.asked("string(//*[@class='lead'])") == "There are no words in this script yet.");
}
