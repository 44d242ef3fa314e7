#include "profile/demo_source.h"
#include "sheet/rows.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::sheet;

namespace {

project::Mark mark(std::variant<marks::Note, marks::Breath, marks::Phrase, marks::Switch> what) {
    static std::int64_t id = 100;
    project::Mark m;
    m.id = {++id};
    m.what = std::move(what);
    return m;
}

marks::Note note(double from, double to, double midi = 64) {
    marks::Note n;
    n.span = {Seconds(from), Seconds(to)};
    n.pitch = MidiPitch(midi);
    n.confidence = {0.9};
    return n;
}

marks::Phrase phrase(double from, double to) {
    marks::Phrase p;
    p.span = {Seconds(from), Seconds(to)};
    return p;
}

marks::Breath breath(double from, double to) {
    marks::Breath b;
    b.span = {Seconds(from), Seconds(to)};
    return b;
}

profile::Source song(double duration, std::vector<project::Mark> marks) {
    profile::Source s;
    s.performance.facts.duration = Seconds(duration);
    s.marks = std::move(marks);
    return s;
}

} // namespace

TEST_CASE("Rows share out the whole recording, without gap or overlap") {
    for (const int verses : {1, 3}) {
        const auto source = profile::demo::source(verses);
        const auto all = rows(source, Seconds(GENERATE(2.0, 5.0, 9.0, 60.0)));
        REQUIRE(all.size() > 5);
        CHECK(all.front().shown.start == Seconds(0));
        CHECK(all.back().shown.end >= source.performance.facts.duration);
        for (std::size_t i = 1; i < all.size(); ++i)
            CHECK(all[i].shown.start == all[i - 1].shown.end);
    }
}

TEST_CASE("Every note, breath and switch stands on exactly one row, and on the one that shows its time") {
    const auto source = profile::demo::source(2);
    const auto all = rows(source, Seconds(6));
    std::size_t placed = 0, phrases = 0;
    for (const auto& row : all) {
        placed += row.notes.size() + row.breaths.size() + row.switches.size();
        for (const auto* m : row.breaths)
            CHECK(row.shown.contains(m->span().middle()));
    }
    for (const auto& m : source.marks)
        phrases += m.kind() == project::MarkKind::phrase;
    CHECK(placed == source.marks.size() - phrases);
}

TEST_CASE("A long rest takes a row of its own, and the breath at its end stands with the phrase it is for") {
    const auto source = song(20, {mark(note(1, 3)), mark(phrase(1, 3)), mark(note(12, 15)),
                                  mark(phrase(12, 15)), mark(breath(11.5, 11.9))});
    const auto all = rows(source, Seconds(10));
    REQUIRE(all.size() == 5); // before, phrase, rest, phrase, after
    CHECK(all[2].kind == Row::Kind::rest);
    CHECK(all[2].breaths.empty());
    CHECK(all[3].breaths.size() == 1);
    CHECK(all[3].shown.start.value() == Approx(12 - kLead.value()));
}

TEST_CASE("A phrase that has no room is cut before a note and goes on on the next row") {
    std::vector<project::Mark> marks{mark(phrase(0.5, 12.5))};
    for (int i = 0; i < 12; ++i)
        marks.push_back(mark(note(0.5 + i, 1.4 + i)));
    const auto all = rows(song(13, marks), Seconds(5.3));
    REQUIRE(all.size() == 3);
    CHECK(all[0].goes_on);
    CHECK_FALSE(all[0].continued);
    CHECK(all[1].continued);
    CHECK(all[1].sung.start.value() == Approx(5.5));
    CHECK_FALSE(all[2].goes_on);
    CHECK(all[0].phrase == all[2].phrase);
}

TEST_CASE("Notes that no phrase covers are shown all the same") {
    const auto all = rows(song(10, {mark(note(1, 2)), mark(phrase(1, 2)), mark(note(5, 6))}), Seconds(8));
    std::size_t notes = 0;
    for (const auto& row : all)
        notes += row.notes.size();
    CHECK(notes == 2);
    CHECK(all[row_at(all, Seconds(5.5))].kind == Row::Kind::sung);
}

TEST_CASE("Dropped marks are not on the sheet") {
    auto dropped = mark(note(5, 6, 90));
    dropped.state = project::MarkState::dropped;
    const auto all = rows(song(10, {mark(note(1, 2)), mark(phrase(1, 2)), dropped}), Seconds(8));
    for (const auto& row : all)
        CHECK(row.high < 80);
}

TEST_CASE("A recording in which nobody sings is one rest") {
    const auto all = rows(song(30, {}), Seconds(8));
    REQUIRE(all.size() == 1);
    CHECK(all[0].kind == Row::Kind::rest);
    CHECK(rows(song(0, {}), Seconds(8)).empty());
}
