// What the window offers for the music around a halt.
#include "desk/work/talk_choices.h"
#include "script/script_material.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace luft;
using namespace luft::desk;
using namespace luft::script::testing;
using project::ScriptItem;
using project::ScriptItemKind;

namespace {

bool offers(const std::vector<PlaceChoice>& choices, std::optional<Seconds> at) {
    return std::ranges::find(choices, at, &PlaceChoice::at) != choices.end();
}

} // namespace

TEST_CASE("the music before a halt may begin with its phrase, and the talk before goes on there then") {
    const auto source =
        with({item(1, ScriptItemKind::stop, 12, "one"), item(2, ScriptItemKind::stop, 44, "two")});
    const auto choices = lead_ins(source, source.items[1]);
    REQUIRE(choices.size() == 3);
    CHECK_FALSE(choices[0].at);
    CHECK(choices[1].at == Seconds(33.5)); // half a second before the phrase, for its breath
    CHECK(choices[2].at == Seconds(14.5));
    const ScriptItem talk = with_lead_in(source, source.items[1], choices[1].at);
    CHECK(talk.id == source.items[0].id);
    CHECK(talk.resume == Seconds(33.5));
}

TEST_CASE("before the first halt the opening lets the music begin later, and is made where there is none") {
    const auto source = with({item(1, ScriptItemKind::stop, 24, "one")});
    const ScriptItem made = with_lead_in(source, source.items[0], Seconds(14.5));
    CHECK(made.id.value == 0);
    CHECK(made.kind == ScriptItemKind::opening);
    CHECK(made.resume == Seconds(14.5));
    const auto opened =
        with({item(1, ScriptItemKind::opening, 0, "hello"), item(2, ScriptItemKind::stop, 24, "one")});
    CHECK(with_lead_in(opened, opened.items[1], {}).id == opened.items[0].id);
}

TEST_CASE("after a halt playback goes on there, with its phrase again, or with the next phrase") {
    auto source = with({item(1, ScriptItemKind::stop, 24, "one")});
    source.items[0].resume = Seconds(40);
    const auto choices = resumes(source, source.items[0]);
    for (const auto at : {std::optional<Seconds>(), std::optional(Seconds(14.5)),
                          std::optional(Seconds(33.5)), std::optional(Seconds(40))})
        CHECK(offers(choices, at));
    CHECK(choices.size() == 4);
}

TEST_CASE("a stop can play its moment or its phrase again") {
    auto source = with({item(1, ScriptItemKind::stop, 24, "one")});
    source.moments = {moment(7, 16, 17, project::Verdict::watch, {})};
    source.items[0].moment = source.moments[0].id;
    const auto choices = replays(source, source.items[0]);
    REQUIRE(choices.size() == 3);
    CHECK_FALSE(choices[0].span);
    CHECK(choices[1].span == Span{Seconds(15.5), Seconds(17.5)});
    CHECK(choices[2].span == Span{Seconds(14.5), Seconds(24)});
    source.items[0].replay = Span{Seconds(1), Seconds(2)};
    CHECK(replays(source, source.items[0]).back().span == source.items[0].replay);
}
