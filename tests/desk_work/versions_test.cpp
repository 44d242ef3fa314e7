// What the page of two performances does, without the page.
#include "desk/work/told.h"
#include "two.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <thread>

using namespace luft;
using namespace luft::desk;
using sheet::Which;

namespace {

std::optional<std::size_t> of_kind(const Versions& versions, compare::DifferenceKind kind) {
    const auto& all = versions.result()->comparison.differences;
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].kind == kind) return i;
    return std::nullopt;
}

} // namespace

TEST_CASE("Two performances are compared once, and anew when a mark or a pin changes, not when words about "
          "them do") {
    Two two;
    Versions versions(two.session);
    REQUIRE(versions.possible());
    CHECK(versions.performance(Which::a).id == two.a);
    CHECK(versions.performance(Which::b).id == two.b);
    REQUIRE(do_wanted(versions, two.session));
    CHECK(versions.result()->comparison.alignment.semitones == Two::kHigher);
    CHECK_FALSE(versions.wanted());

    project::Moment moment;
    moment.performance = two.a;
    moment.span = {Seconds(3), Seconds(4)};
    two.session.edit([&](project::Project& p) { p.add_moment(moment); });
    CHECK_FALSE(versions.wanted());

    const auto id = two.session.source().marks.front().id;
    two.session.edit([&](project::Project& p) { p.set_mark_state(id, project::MarkState::dropped); });
    CHECK(versions.wanted());
    CHECK_FALSE(versions.wanted()); // it is asked for already
    two.session.undo();
    CHECK_FALSE(versions.wanted()); // as it was when it was compared
    versions.set_place(Which::a, Seconds(4));
    versions.set_place(Which::b, Two::on_b(4));
    versions.pin_places();
    CHECK(do_wanted(versions, two.session));
}

TEST_CASE("The comparison is made in the background, as other long work, and says how it came out") {
    Two two;
    Job job(two.file(), Job::Match{two.a, two.b});
    while (!job.state().finished)
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    REQUIRE_FALSE(job.outcome().fault);
    REQUIRE(job.outcome().matched);
    REQUIRE(job.comparison());
    CHECK(job.comparison()->a == two.a);
    CHECK(job.outcome().matched->comparison.counterparts.phrases.size() == 4);

    Job stopped(two.file(), Job::Match{two.a, two.b});
    stopped.stop();
    while (!stopped.state().finished)
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    CHECK_FALSE(stopped.outcome().fault);
}

TEST_CASE("A line that only one of them sings is heard of that one alone") {
    Two two;
    const auto longer =
        two.session.edit([&](project::Project& p) { // as A, and nobody has these lines besides
            project::Performance details;
            details.label = "C";
            details.facts.duration = Seconds(60);
            luft::test::write_all(two.folder / "C.wav", "no sound, only bytes of C");
            return p.add_performance(two.folder / "C.wav", false, details);
        });
    auto heard = Two::heard(false);
    heard.duration = Seconds(60);
    marks::Phrase more;
    more.span = {Seconds(40), Seconds(45)};
    more.confidence = {0.95};
    heard.phrases.push_back(more);
    two.session.edit([&](project::Project& p) { p.store_listening(longer, heard); });
    Versions versions(two.session);
    versions.choose(Which::b, longer);
    REQUIRE(do_wanted(versions, two.session));
    REQUIRE(versions.result()->comparison.counterparts.phrases_only_b.size() == 1);
    versions.set_place(Which::b, Seconds(42));
    CHECK(versions.heard(Which::b) == Span{Seconds(40), Seconds(45)});
    CHECK_FALSE(versions.heard(Which::a));
    CHECK_THROWS_AS(versions.turn(Which::a), Error);
    CHECK(versions.in_turn() == std::deque<Turn>{{Which::b, {Seconds(40), Seconds(45)}}});
}

TEST_CASE("Places are inside the recordings, and go with the pair that they were clicked in") {
    Two two;
    const auto third = two.add("C", true);
    two.session.reload();
    Versions versions(two.session);
    versions.choose(Which::b, third);
    versions.set_place(Which::a, Seconds(-0.4));
    CHECK(versions.place(Which::a) == Seconds(0));
    versions.set_place(Which::a, Seconds(40.4));
    CHECK(versions.place(Which::a) == Seconds(40));
    two.session.edit([&](project::Project& p) { p.remove_performance(third); });
    CHECK_FALSE(versions.place(Which::a));
    CHECK(versions.looked_at() == Which::b);
}

TEST_CASE("Upper and lower change places, and what was found for either order is kept") {
    Two two;
    Versions versions(two.session);
    REQUIRE(do_wanted(versions, two.session));
    versions.swap();
    CHECK(versions.performance(Which::a).id == two.b);
    CHECK(versions.result() == nullptr);
    REQUIRE(do_wanted(versions, two.session));
    CHECK(versions.result()->comparison.alignment.semitones == -Two::kHigher);
    versions.swap();
    REQUIRE(versions.result() != nullptr);
    CHECK(versions.result()->comparison.alignment.semitones == Two::kHigher);
    CHECK_FALSE(versions.wanted());
}

TEST_CASE("Of three performances any two are compared, and one can't stand against itself") {
    Two two;
    Versions versions(two.session);
    REQUIRE(do_wanted(versions, two.session));
    const auto third = two.add("C", true);
    two.session.reload();
    CHECK(versions.performance(Which::b).id == two.b); // what was chosen stays
    versions.set_place(Which::a, Seconds(4));
    versions.choose(Which::a, third);
    CHECK_FALSE(versions.place(Which::a));
    REQUIRE(do_wanted(versions, two.session));
    CHECK(versions.result()->comparison.alignment.semitones == 0);
    versions.choose(Which::a, two.b);
    CHECK(versions.performance(Which::b).id == third);
    two.session.edit([&](project::Project& p) { p.remove_performance(third); });
    CHECK(versions.performance(Which::a).id == two.a);
    CHECK(versions.performance(Which::b).id == two.b);
    CHECK(versions.result() != nullptr); // known from before
}

TEST_CASE("Differences are gone through in the order that is listed, by time or by what tells most") {
    Two two;
    Versions versions(two.session);
    REQUIRE(do_wanted(versions, two.session));
    const auto& all = versions.result()->comparison.differences;
    REQUIRE(all.size() >= 3);
    std::vector<std::size_t> by_time(all.size());
    for (std::size_t i = 0; i < all.size(); ++i)
        by_time[i] = i;
    CHECK(versions.listed() == by_time);
    versions.step(true);
    CHECK(versions.selected() == 0U);
    versions.step(true);
    CHECK(versions.selected() == 1U);
    versions.step(false);
    versions.step(false);
    CHECK(versions.selected() == 0U); // there is none before the first
    versions.set_order(DifferenceOrder::most_telling);
    auto sorted = versions.listed();
    CHECK(sorted != by_time);
    std::ranges::sort(sorted);
    CHECK(sorted == by_time);
}

TEST_CASE("A selected difference is heard in either performance, long enough to know the place") {
    Two two;
    Versions versions(two.session);
    REQUIRE(do_wanted(versions, two.session));
    const auto breath = of_kind(versions, compare::DifferenceKind::breath_added);
    REQUIRE(breath);
    versions.select(breath);
    const auto& difference = versions.result()->comparison.differences[*breath];
    for (const Which which : {Which::a, Which::b}) {
        const auto heard = versions.heard(which);
        REQUIRE(heard);
        CHECK(heard->length().value() > kLeastHeard.value() - 1e-9);
        const Span own = which == Which::a ? *difference.a : *difference.b;
        CHECK(heard->start <= own.start);
        CHECK(heard->end >= own.end);
    }
    const auto turns = versions.in_turn();
    REQUIRE(turns.size() == 2);
    CHECK(turns[0] == Turn{Which::a, *versions.heard(Which::a)});
    CHECK(turns[1] == Turn{Which::b, *versions.heard(Which::b)});
    CHECK(versions.both() == std::deque<Turn>{{Which::a, *versions.heard(Which::a), true}});
}

TEST_CASE("Without a difference the line at the place clicked is heard, in both performances") {
    Two two;
    Versions versions(two.session);
    CHECK_THROWS_AS(versions.turn(Which::a), Error); // nothing is known yet
    REQUIRE(do_wanted(versions, two.session));
    CHECK(versions.heard(Which::a)->start.value() == Approx(2));
    versions.set_place(Which::b, Two::on_b(17));
    CHECK(versions.heard(Which::b)->contains(Two::on_b(17)));
    CHECK(versions.heard(Which::a)->contains(Seconds(17)));
    CHECK(versions.looked_at() == Which::b);
}

TEST_CASE("Turns follow each other when their end is reached, or when the recording has ended before") {
    Turns turns;
    turns.start({{Which::a, {Seconds(1), Seconds(2)}}, {Which::b, {Seconds(5), Seconds(6)}}});
    CHECK_FALSE(turns.over(Seconds(1.5), true));
    CHECK(turns.now()->which == Which::a);
    CHECK(turns.over(Seconds(2), true));
    CHECK(turns.now()->which == Which::b);
    CHECK_FALSE(turns.over(Seconds(5.2), true));
    CHECK(turns.over(Seconds(5.2), false));
    CHECK_FALSE(turns.now());
    CHECK_FALSE(turns.over(Seconds(7), false));
}

TEST_CASE("A moment made of a difference quotes both performances, in one edit that undo takes back") {
    Two two;
    Versions versions(two.session);
    REQUIRE(do_wanted(versions, two.session));
    CHECK_THROWS_AS(versions.make_moment(Which::b), Error); // of which difference?
    versions.select(of_kind(versions, compare::DifferenceKind::key));
    CHECK_THROWS_AS(versions.make_moment(Which::b), Error); // where?
    versions.select(of_kind(versions, compare::DifferenceKind::breath_added));
    const std::string sentence = versions.result()->comparison.differences[*versions.selected()].sentence;
    const Span in_a = *versions.heard(Which::a), in_b = *versions.heard(Which::b);
    for (const Which which : {Which::b, Which::a}) {
        const auto here = which == Which::b ? two.b : two.a, there = which == Which::b ? two.a : two.b;
        const auto before = two.session.undo_label();
        versions.make_moment(which);
        CHECK(two.session.shown() == here);
        const auto* moment = two.session.selected_moment();
        REQUIRE(moment);
        CHECK(moment->evidence == sentence);
        CHECK(moment->span == (which == Which::b ? in_b : in_a));
        REQUIRE(moment->beside);
        CHECK(*moment->beside == project::Quote{there, which == Which::b ? in_a : in_b});
        CHECK(told(two.session.performances(), *moment->beside).find(which == Which::b ? "A, 0:" : "B, 0:") ==
              0);
        two.session.undo();
        CHECK(two.session.project().moments(here).empty());
        CHECK(two.session.undo_label() == before);
    }
}

TEST_CASE("Pins are set between two clicked places, one a place, and taken out again") {
    Two two;
    Versions versions(two.session);
    REQUIRE(do_wanted(versions, two.session));
    CHECK_THROWS_AS(versions.pin_places(), Error);
    versions.set_place(Which::a, Seconds(10));
    CHECK_THROWS_AS(versions.pin_places(), Error);
    versions.set_place(Which::b, Seconds(9.6));
    versions.pin_places();
    REQUIRE(versions.pins().size() == 1);
    CHECK(versions.pins()[0] == project::Pin{Seconds(10), Seconds(9.6)});
    REQUIRE(do_wanted(versions, two.session));
    CHECK(versions.counterpart(Which::a, Seconds(10))->value() == Approx(9.6).margin(1e-6));
    versions.set_place(Which::b, Seconds(9.4)); // the same place of A again: the pin is moved
    versions.pin_places();
    CHECK(versions.pins().size() == 1);
    versions.set_place(Which::a, Seconds(12));
    versions.set_place(Which::b, Seconds(8));
    CHECK_THROWS_AS(versions.pin_places(), Error); // it would cross
    CHECK(versions.pins().size() == 1);
    versions.swap();
    CHECK(versions.pins()[0] == project::Pin{Seconds(9.4), Seconds(10)});
    versions.remove_pin(0);
    CHECK(versions.pins().empty());
    two.session.undo();
    CHECK(versions.pins().size() == 1);
}

TEST_CASE("A project with one performance has nothing to compare, and closing forgets what was found") {
    Two two;
    Versions versions(two.session);
    REQUIRE(do_wanted(versions, two.session));
    two.session.close();
    CHECK(versions.result() == nullptr);
    CHECK_FALSE(versions.possible());
    CHECK_FALSE(versions.wanted());
}
