// Two performances below each other: where everything stands.
#include "sheet/measures.h"
#include "sheet/pair_material.h"
#include "sheet/rows.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::sheet;
using test::Pair;

namespace {

PairView view(double per_second = 90) {
    PairView v;
    v.per_second = per_second;
    return v;
}

double height_of(const PairLayout& layout, std::size_t row, Which which, const project::Mark& mark) {
    const SungLine line = layout.line(row, which);
    const auto& note = std::get<marks::Note>(mark.what);
    return line.y_of(note.pitch.value() - retuned(*line.source)) - line.staff.top;
}

} // namespace

TEST_CASE("Each phrase of both has its row, and one without counterpart faces an empty place") {
    const Pair pair;
    const PairLayout layout(pair.source(), view(40));
    int together = 0, only_a = 0, only_b = 0;
    for (const PairRow& row : layout.rows()) {
        together += !row.a.lacking && !row.b.lacking;
        only_a += row.b.lacking;
        only_b += row.a.lacking;
        CHECK(row.a.phrases.size() + row.b.phrases.size() == (row.a.lacking || row.b.lacking ? 1 : 2));
    }
    CHECK(together == 8);
    CHECK(only_a == 1);
    CHECK(only_b == 1);
    REQUIRE(layout.rows().size() == 10);
    CHECK(layout.rows()[2].b.lacking);
    CHECK(layout.rows()[7].a.lacking);
}

TEST_CASE("Counterpart notes stand at one place across, though one performance is faster") {
    const Pair pair;
    const PairLayout layout(pair.source(), view(60));
    int checked = 0;
    for (std::size_t row = 0; row < layout.rows().size(); ++row) {
        const PairRow& r = layout.rows()[row];
        if (r.a.lacking || r.b.lacking) continue;
        REQUIRE(r.a.notes.size() == r.b.notes.size());
        for (std::size_t i = 0; i < r.a.notes.size(); ++i, ++checked)
            CHECK(layout.x_of(row, Which::a, r.a.notes[i]->span().start) ==
                  Approx(layout.x_of(row, Which::b, r.b.notes[i]->span().start)).margin(1e-6));
    }
    CHECK(checked > 40);
}

TEST_CASE("Brought into one key both stand at one height; as sung, B stands higher by the key") {
    const Pair pair;
    PairView as_sung = view(40);
    as_sung.as_sung = true;
    const PairLayout together(pair.source(), view(40)), sung(pair.source(), as_sung);
    const auto higher = [](const PairLayout& layout) {
        return height_of(layout, 0, Which::a, *layout.rows()[0].a.notes.front()) -
               height_of(layout, 0, Which::b, *layout.rows()[0].b.notes.front());
    };
    CHECK(higher(together) == Approx(0).margin(1e-6));
    CHECK(higher(sung) == Approx(test::kHigher * 7));
}

TEST_CASE("As sung, another tuning is seen; in one key it is taken out") {
    Pair pair;
    pair.b.listening->tuning = Hertz(pair.a.listening->tuning.value() * std::exp2(0.5 / 12));
    pair.alignment.tuning = Cents(50);
    for (auto& mark : pair.b.marks)
        if (auto* note = std::get_if<marks::Note>(&mark.what)) note->pitch += MidiPitch(0.5);
    for (const bool as_sung : {false, true}) {
        PairView v = view(40);
        v.as_sung = as_sung;
        const PairLayout layout(pair.source(), v);
        const double higher = height_of(layout, 0, Which::a, *layout.rows()[0].a.notes.front()) -
                              height_of(layout, 0, Which::b, *layout.rows()[0].b.notes.front());
        CHECK(higher == Approx(as_sung ? 7 * (test::kHigher + 0.5) : 0).margin(1e-6));
    }
}

TEST_CASE("A place in either line and the time sung there are each other's inverse") {
    const Pair pair;
    const PairLayout layout(pair.source(), view(60));
    for (std::size_t row = 0; row < layout.rows().size(); ++row)
        for (const Which which : kBoth) {
            const PairPart& part = layout.rows()[row].part(which);
            if (part.lacking) continue;
            for (const double share : {0.02, 0.4, 0.97}) {
                const Seconds t = part.sung.start + part.sung.length() * share;
                CHECK(layout.time_at(row, which, layout.x_of(row, which, t)).value() ==
                      Approx(t.value()).margin(1e-6));
                CHECK(layout.row_of(which, t) == row);
            }
        }
}

TEST_CASE(
    "Where there is little room a row goes on below, and every note stands on one row inside its width") {
    const Pair pair;
    PairView narrow = view(100);
    narrow.width = 520;
    const PairLayout layout(pair.source(), narrow);
    CHECK(layout.rows().size() > 15);
    std::size_t seen = 0;
    for (std::size_t row = 0; row < layout.rows().size(); ++row) {
        CHECK(layout.rows()[row].goes_on ==
              (row + 1 < layout.rows().size() && layout.rows()[row + 1].continued));
        for (const Which which : kBoth)
            for (const auto* note : layout.rows()[row].part(which).notes) {
                ++seen;
                CHECK(layout.x_of(row, which, note->span().start) >= kPairGutter);
                CHECK(layout.x_of(row, which, note->span().start) < narrow.width);
            }
    }
    // The demo's last note, far behind all phrases, stands on none.
    CHECK(seen == of_kind(pair.a, project::MarkKind::note).size() +
                      of_kind(pair.b, project::MarkKind::note).size() - 2);
}

TEST_CASE("A breath stands before the line that it is taken for, in both performances") {
    const Pair pair;
    const PairLayout layout(pair.source(), view(60));
    // The demo breathes 0.12 s after each line, up to 0.6 s before the next one.
    for (std::size_t row = 1; row < layout.rows().size(); ++row)
        for (const Which which : kBoth)
            for (const auto* breath : layout.rows()[row].part(which).breaths) {
                const Seconds middle = breath->span().middle();
                const Span sung = layout.rows()[row].part(which).sung;
                if (middle < sung.start) CHECK(sung.start - middle <= Seconds(1.6));
            }
    CHECK(pair_row_of(layout.rows(), Which::a, layout.rows()[1].a.sung.start - Seconds(0.3)) == 1U);
    CHECK(pair_row_of(layout.rows(), Which::b, layout.rows()[1].b.sung.start - Seconds(0.3)) == 1U);
}

TEST_CASE("Rows stand below each other under the head") {
    const Pair pair;
    const PairLayout layout(pair.source(), view(60));
    double y = layout.head_height();
    CHECK(y > 20);
    for (const PlacedPair& place : layout.places()) {
        CHECK(place.top == Approx(y));
        CHECK(place.a.bottom < place.between);
        CHECK(place.between < place.b.top);
        CHECK(place.b.bottom < place.height);
        y += place.height;
    }
    CHECK(layout.height() == Approx(y));
}

TEST_CASE("Two performances without phrases, or with nothing in common, have no wrong row") {
    Pair pair;
    pair.alignment.stretches.clear();
    pair.find();
    const PairLayout apart(pair.source(), view(60));
    for (const PairRow& row : apart.rows())
        CHECK(row.a.lacking != row.b.lacking);
    CHECK(apart.rows().size() == 18);
    pair.a.marks.clear();
    pair.b.marks.clear();
    pair.find();
    const PairLayout none(pair.source(), view(60));
    CHECK(none.rows().empty());
    CHECK(none.height() == none.head_height());
}
