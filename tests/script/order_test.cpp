// Where the parts of a script go when they are put elsewhere.
#include "script/order.h"
#include "script/script_material.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::script;
using namespace luft::script::testing;
using project::ScriptItem;
using project::ScriptItemKind;

TEST_CASE("a stop put between two others halts at the phrase end between them") {
    const Source s =
        with({item(1, ScriptItemKind::stop, 12, words(5)), item(2, ScriptItemKind::stop, 44, words(5)),
              item(3, ScriptItemKind::stop, 58, words(5))});
    const auto moved = placed_between(s, lay_out(s), s.items[2], &s.items[0], &s.items[1]);
    REQUIRE(moved);
    CHECK(moved->at == Seconds(24)); // 44 s is nearer to 58 s, but another stop is there
    CHECK(moved->position == 0);
}

TEST_CASE("a stop stays where no phrase ends between its new neighbours") {
    const Source s =
        with({item(1, ScriptItemKind::stop, 13, words(5)), item(2, ScriptItemKind::stop, 23, words(5)),
              item(3, ScriptItemKind::stop, 58, words(5))});
    CHECK_FALSE(placed_between(s, lay_out(s), s.items[2], &s.items[0], &s.items[1]));
}

TEST_CASE("an aside put elsewhere goes into a rest that it fits") {
    const Source s =
        with({item(1, ScriptItemKind::aside, 1, words(5)), item(2, ScriptItemKind::stop, 24, words(5)),
              item(3, ScriptItemKind::stop, 44, words(5))});
    const auto moved = placed_between(s, lay_out(s), s.items[0], &s.items[1], &s.items[2]);
    REQUIRE(moved);
    CHECK(moved->at == Seconds(24));
    CHECK_FALSE(placed_between(s, lay_out(s), item(1, ScriptItemKind::aside, 1, words(50)), &s.items[1],
                               &s.items[2]));
}

TEST_CASE("openings change places among themselves and go nowhere else") {
    const Source s =
        with({item(1, ScriptItemKind::opening, 0, "One."), item(2, ScriptItemKind::opening, 0, "Two."),
              item(3, ScriptItemKind::stop, 12, "Three.")});
    const auto later = placed_between(s, lay_out(s), s.items[0], &s.items[1], &s.items[2]);
    REQUIRE(later);
    CHECK(later->position == 2);
    const auto sooner = placed_between(s, lay_out(s), s.items[1], nullptr, &s.items[0]);
    REQUIRE(sooner);
    CHECK(sooner->position == 1);
    CHECK_FALSE(placed_between(s, lay_out(s), s.items[0], &s.items[2], nullptr));
}

TEST_CASE("a halt steps from phrase end to phrase end") {
    const Source s = with({item(1, ScriptItemKind::stop, 24, words(5))});
    CHECK(at_neighbouring_phrase_end(s, s.items[0], true)->at == Seconds(44));
    CHECK(at_neighbouring_phrase_end(s, s.items[0], false)->at == Seconds(12));
    CHECK_FALSE(at_neighbouring_phrase_end(s, item(1, ScriptItemKind::stop, 44, "x"), true));
    CHECK_FALSE(at_neighbouring_phrase_end(s, item(1, ScriptItemKind::stop, 12, "x"), false));
}
