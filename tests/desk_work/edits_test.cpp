#include "base/error.h"
#include "desk/work/edits.h"
#include "desk_work/desk.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::desk;

namespace {

template <class Kind>
const project::Mark* first(const Desk& desk) {
    for (const auto& mark : desk.session.source().marks)
        if (std::holds_alternative<Kind>(mark.what)) return &mark;
    return nullptr;
}

} // namespace

TEST_CASE("A breath set in a gap fills the gap; one set into singing is short") {
    Desk desk;
    const Span gap = breath_span(desk.session.source(), Seconds(2.7));
    CHECK(gap.start.value() == Approx(2.45));
    CHECK(gap.end.value() == Approx(3.0));
    const Span inside = breath_span(desk.session.source(), Seconds(1.2));
    CHECK(inside.length().value() == Approx(0.3));
    CHECK(inside.contains(Seconds(1.2)));
}

TEST_CASE("A breath, a switch and a moment made by key are kept, the coach's own, and selected") {
    Desk desk;
    set_breath(desk.session, Seconds(1.2));
    REQUIRE(desk.session.selected_mark());
    CHECK(desk.session.selected_mark()->origin == project::Origin::coach);
    CHECK(desk.session.selected_mark()->state == project::MarkState::kept);
    set_switch(desk.session, Seconds(3.4));
    CHECK(std::holds_alternative<marks::Switch>(desk.session.selected_mark()->what));
    make_moment(desk.session, {Seconds(3), Seconds(4)});
    CHECK(desk.session.selected_moment()->span == Span{Seconds(3), Seconds(4)});
}

TEST_CASE(
    "A moment is about what is selected, else the last seconds heard, else the phrase at the playhead") {
    Desk desk;
    CHECK(moment_span(desk.session, Seconds(3.5), false) == Span{Seconds(3), Seconds(5)});
    CHECK(moment_span(desk.session, Seconds(3.5), true) == Span{Seconds(0.5), Seconds(3.5)});
    desk.session.select(first<marks::Breath>(desk)->id);
    CHECK(moment_span(desk.session, Seconds(3.5), true) == Span{Seconds(2.6), Seconds(2.9)});
}

TEST_CASE("A moment never reaches past the recording") {
    Desk desk;
    make_moment(desk.session, {Seconds(5), Seconds(9)});
    CHECK(desk.session.selected_moment()->span.end == Seconds(6));
}

TEST_CASE("Phrases are split at the playhead and joined again") {
    Desk desk;
    split_phrase(desk.session, Seconds(1.5));
    const auto count = [&] {
        return std::ranges::count_if(desk.session.source().marks,
                                     [](const auto& m) { return m.kind() == project::MarkKind::phrase; });
    };
    CHECK(count() == 3);
    desk.session.select({});
    join_phrase(desk.session, Seconds(1.0));
    CHECK(count() == 2);
    CHECK(phrase_at(desk.session.source(), Seconds(1.0))->span() == Span{Seconds(0.5), Seconds(2.5)});
    CHECK_THROWS_AS(split_phrase(desk.session, Seconds(2.8)), Error);
    CHECK_THROWS_AS(join_phrase(desk.session, Seconds(4)), Error);
}

TEST_CASE("Changing the kind goes round: breath, switch and onset") {
    Desk desk;
    desk.session.select(first<marks::Breath>(desk)->id);
    change_kind(desk.session);
    CHECK(std::get<marks::Breath>(desk.session.selected_mark()->what).evidence_kind ==
          marks::BreathEvidence::inferred);
    set_switch(desk.session, Seconds(1));
    change_kind(desk.session);
    CHECK(std::get<marks::Switch>(desk.session.selected_mark()->what).to == marks::Register::chest);
    desk.session.select(first<marks::Note>(desk)->id);
    const auto kind = [&] { return std::get<marks::Note>(desk.session.selected_mark()->what).onset.kind; };
    const auto before = kind();
    change_kind(desk.session);
    CHECK(kind() != before);
    change_kind(desk.session);
    change_kind(desk.session);
    CHECK(kind() == before);
}

TEST_CASE("A stop put into the script belongs to the moment that lies there") {
    Desk desk;
    make_moment(desk.session, {Seconds(3), Seconds(4)});
    const auto moment = moment_of(desk.session.selection());
    desk.session.select({});
    make_stop(desk.session, Seconds(3.5));
    const auto script = desk.session.project().script(*desk.session.shown());
    REQUIRE(script.size() == 1);
    CHECK(script[0].moment == moment);
    CHECK(script[0].at == Seconds(3.5));
}

TEST_CASE("Moving a mark keeps it, and one undo puts it back") {
    Desk desk;
    const auto id = first<marks::Breath>(desk)->id;
    move_mark(desk.session, id, {Seconds(2.65), Seconds(2.95)});
    CHECK(desk.session.mark(id)->state == project::MarkState::kept);
    desk.session.undo();
    CHECK(desk.session.mark(id)->span().start == Seconds(2.6));
    CHECK(desk.session.mark(id)->state == project::MarkState::proposed);
}

TEST_CASE("Going from mark to mark visits every one in order of time and stops at the ends") {
    Desk desk;
    std::vector<Seconds> starts;
    for (int i = 0; i < 20; ++i) {
        const auto next = neighbour(desk.session, Seconds(0), true);
        if (next == desk.session.selection()) break;
        desk.session.select(next);
        starts.push_back(desk.session.selected_mark()->span().start);
    }
    CHECK(starts.size() == 9); // eight notes and a breath
    CHECK(std::ranges::is_sorted(starts));
    CHECK(neighbour(desk.session, Seconds(0), false) != desk.session.selection());
}
