// Two performances below each other, as pictures.
#include "sheet/pair_draw.h"
#include "sheet/pair_material.h"
#include "sheet/pixels.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::sheet;
using test::bytes;
using test::count;
using test::Pair;

namespace {

/// The row in which the first difference is, or the first.
Canvas drawn(const Pair& pair, const PairLook& look = {}, std::size_t row = 0) {
    const Canvas measuring = Canvas::picture(1, 1);
    PairView view;
    view.per_second = 60;
    const PairLayout layout(pair.source(), view, letters_of(measuring));
    Canvas canvas =
        Canvas::picture(static_cast<int>(view.width), static_cast<int>(layout.places()[row].height));
    canvas.clear(look.look.colours.paper);
    draw_pair_row(canvas, layout, row, look);
    return canvas;
}

} // namespace

TEST_CASE("Both ribbons are drawn: twice as much of the register's colour as of one alone") {
    Pair pair;
    for (auto* source : {&pair.a, &pair.b})
        for (auto& mark : source->marks)
            if (auto* note = std::get_if<marks::Note>(&mark.what)) note->sung_in = marks::Register::chest;
    const Colour chest = light_colours().chest;
    Canvas both = drawn(pair), alone = drawn(pair, {}, 2);
    CHECK(count(alone, chest) > 1000);
    for (auto& mark : pair.b.marks)
        if (auto* note = std::get_if<marks::Note>(&mark.what)) note->sung_in = std::nullopt;
    Canvas only_a = drawn(pair);
    CHECK(count(both, chest) > 1.8 * count(only_a, chest));
}

TEST_CASE("A selected difference is seen in both lines") {
    Pair pair;
    pair.add_difference(2, compare::DifferenceKind::breath_saved);
    PairLook look;
    Canvas before = drawn(pair, look);
    look.selected = 0;
    Canvas after = drawn(pair, look);
    CHECK((bytes(before) != bytes(after)));
    look.selected = 5; // another one
    Canvas other = drawn(pair, look);
    CHECK((bytes(before) == bytes(other)));
}

TEST_CASE("The sign of a difference, an added note and a pin each leave their mark") {
    Pair pair;
    Canvas plain = drawn(pair);
    CHECK(count(plain, light_colours().watch) == 0);
    pair.add_difference(2, compare::DifferenceKind::breath_saved);
    Canvas marked = drawn(pair);
    CHECK(count(marked, light_colours().watch) > 100);
    pair.differences.clear();
    int seen = 0;
    std::erase_if(pair.a.marks,
                  [&](const auto& m) { return m.kind() == project::MarkKind::note && ++seen == 4; });
    pair.find();
    REQUIRE(pair.counterparts.added_by_b.size() == 1);
    Canvas added = drawn(pair);
    pair.counterparts.added_by_b.clear();
    Canvas not_added = drawn(pair);
    CHECK((bytes(added) != bytes(not_added)));
    CHECK(count(not_added, light_colours().playhead) == 0);
    const Seconds at = pair.a.marks.front().span().start;
    pair.pins = {{at, test::moved(at)}};
    Canvas pinned = drawn(pair);
    CHECK(count(pinned, light_colours().playhead) > 50);
}

TEST_CASE("A line whose counterpart the ear doubts is said to be unsure") {
    Pair pair;
    Canvas sure = drawn(pair);
    pair.alignment.stretches[0].confidence = {0.3};
    Canvas unsure = drawn(pair);
    CHECK((bytes(sure) != bytes(unsure)));
}
