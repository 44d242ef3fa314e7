// The script as the window lists it.
#include "desk/work/script_rows.h"
#include "script/script_material.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::desk;
using namespace luft::script::testing;
using project::ScriptItemKind;

namespace {

script::Source scripted() {
    script::Source source = material();
    source.settings.longest_quote = Seconds(18);
    source.items = {item(1, ScriptItemKind::opening, 0, words(5)),
                    item(2, ScriptItemKind::stop, 24, words(10)),
                    item(3, ScriptItemKind::aside, 26, words(4)),
                    item(4, ScriptItemKind::aside, 58, words(40)), item(5, ScriptItemKind::closing, 50, "")};
    source.items[1].replay = Span{Seconds(15), Seconds(24)};
    source.items[1].replay_speed = 0.5;
    source.items[1].rehearsed = Seconds(7.5);
    source.sung_words = {{{1}, {1}, "Har", true, Seconds(4), false},
                         {{2}, {1}, "bour", false, Seconds(5), false},
                         {{3}, {1}, "lamps", false, Seconds(30), false}};
    return source;
}

} // namespace

TEST_CASE("the rows follow the programme, and every part of the script has one") {
    const auto source = scripted();
    const auto rows = script_rows(source, script::lay_out(source));
    std::string order;
    for (const auto& row : rows)
        order += row.item ? std::to_string(row.item->value) : "m";
    CHECK(order == "1m2m345"); // the aside at 58 s and the closing without words aren't in the programme
    CHECK(rows[1].title == "Music 0:00.0 to 0:24.0");
    CHECK(rows[1].when == "0:02.0");
    CHECK(rows[1].facts == "24.0 s, 2 phrases");
    CHECK(rows[1].text == "Harbour");
    CHECK(rows[2].stop_number == 1);
    CHECK(rows[2].facts == "10 words, 7.5 s as rehearsed");
    CHECK(rows[2].after == "then plays 0:15.0 to 0:24.0 again at 50 %");
    CHECK(rows[5].when.empty());
    CHECK(rows[6].facts == "no words yet");
}

TEST_CASE("a warning stands at the part that it is about, else it is on the whole") {
    auto source = scripted();
    source.settings.most_quoted_share = 0.1;
    const auto sheet = script::lay_out(source);
    const auto rows = script_rows(source, sheet);
    REQUIRE(rows[1].warnings.size() == 1); // 24 s without a word
    CHECK(sheet.warnings[rows[1].warnings[0]].kind == script::WarningKind::quote_too_long);
    REQUIRE(rows[5].warnings.size() == 1); // the aside that isn't played
    CHECK(sheet.warnings[rows[5].warnings[0]].kind == script::WarningKind::stop_outside);
    const auto whole = warnings_on_the_whole(rows, sheet);
    REQUIRE(whole.size() == 1);
    CHECK(sheet.warnings[whole[0]].kind == script::WarningKind::share_too_large);
}
