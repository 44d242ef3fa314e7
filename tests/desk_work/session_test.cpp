#include "base/error.h"
#include "desk/work/edits.h"
#include "desk/work/session.h"
#include "desk_work/desk.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::desk;

TEST_CASE("A session shows the first performance of a project, with its marks") {
    Desk desk;
    CHECK(desk.session.is_open());
    CHECK(desk.session.shows_performance());
    CHECK(desk.session.source().marks.size() == desk.marks_made);
    CHECK(desk.session.source().performance.label == "A");
}

TEST_CASE("Watchers are told once of an edit, and see the new contents") {
    Desk desk;
    int told = 0;
    std::size_t moments = 0;
    desk.session.watch([&](const Session::Change& change) {
        told += change.contents;
        moments = desk.session.source().moments.size();
    });
    make_moment(desk.session, {Seconds(1), Seconds(2)});
    CHECK(told == 1);
    CHECK(moments == 1);
}

TEST_CASE("An edit that fails changes nothing and tells nobody") {
    Desk desk;
    int told = 0;
    desk.session.watch([&](const Session::Change&) { ++told; });
    CHECK_THROWS_AS(
        desk.session.edit([](project::Project& p) { p.set_mark_state({9999}, project::MarkState::kept); }),
        Error);
    CHECK(told == 0);
}

TEST_CASE("Undo and redo are named, take edits back and bring them again") {
    Desk desk;
    set_breath(desk.session, Seconds(2.75));
    REQUIRE(desk.session.undo_label());
    CHECK(desk.session.undo_label()->find("breath") != std::string::npos);
    CHECK_FALSE(desk.session.redo_label());
    const auto with = desk.session.source().marks.size();
    desk.session.undo();
    CHECK(desk.session.source().marks.size() + 1 == with);
    CHECK(desk.session.redo_label()->find("breath") != std::string::npos);
    desk.session.redo();
    CHECK(desk.session.source().marks.size() == with);
}

TEST_CASE("Of several undone edits the oldest is named for redo") {
    Desk desk;
    set_breath(desk.session, Seconds(2.75));
    make_moment(desk.session, {Seconds(1), Seconds(2)});
    const auto newest = desk.session.undo_label();
    desk.session.undo();
    const auto oldest = desk.session.undo_label();
    desk.session.undo();
    REQUIRE(newest != oldest);
    CHECK(desk.session.redo_label() == oldest);
}

TEST_CASE("What is selected stays selected through other edits, and is let go when it is gone") {
    Desk desk;
    make_moment(desk.session, {Seconds(1), Seconds(2)});
    const auto made = desk.session.selection();
    REQUIRE(desk.session.selected_moment());
    desk.session.edit([&](project::Project& p) {
        project::Moment m;
        m.performance = *desk.session.shown();
        m.span = {Seconds(3), Seconds(4)};
        p.add_moment(m);
    });
    CHECK(desk.session.selection() == made);
    desk.session.undo();
    desk.session.undo();
    CHECK(desk.session.selection() == Selection{});
}

TEST_CASE("A damaged project opens to read with what is left, and says so when it is to be changed") {
    Desk desk;
    desk.session.close();
    desk.make_read_only();
    desk.session.open(desk.file());
    REQUIRE(desk.session.read_only());
    CHECK(desk.session.source().marks.size() == desk.marks_made);
    CHECK_THROWS_AS(make_moment(desk.session, {Seconds(1), Seconds(2)}), Error);
}

TEST_CASE("What another program changed is there after reloading") {
    Desk desk;
    project::Project other = project::Project::open(desk.file());
    project::Moment moment;
    moment.performance = *desk.session.shown();
    moment.span = {Seconds(1), Seconds(2)};
    other.add_moment(moment);
    CHECK(desk.session.source().moments.empty());
    desk.session.reload();
    CHECK(desk.session.source().moments.size() == 1);
}
