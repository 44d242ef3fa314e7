// A rehearsal by a clock and a sound that the test moves.
#include "desk/work/keep_times.h"
#include "desk/work/rehearsal.h"
#include "desk/work/rehearsal_words.h"
#include "desk_work/desk.h"
#include "script/gather.h"
#include "script/script_material.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::desk;
using namespace luft::literals;
using script::SegmentKind;
using script::testing::item;
using script::testing::words;
using State = Rehearsal::State;

namespace {

/// A minute of music at 60 words a minute: an opening of 3 s, a stop of 10 s at 0:20 with 4 s again at half
/// speed, an aside of 2 s at 0:25, a stop of 5 s at 0:40, a closing of 2 s.
script::CueSheet sheet() {
    using project::ScriptItemKind;
    script::Source source;
    source.performance.id = {1};
    source.performance.facts.duration = Seconds(60);
    source.settings.words_per_minute = 60;
    source.vocabulary = vocabulary::default_vocabulary();
    source.items = {item(1, ScriptItemKind::opening, 0, words(3)),
                    item(2, ScriptItemKind::stop, 20, words(10)),
                    item(3, ScriptItemKind::aside, 25, words(2)), item(4, ScriptItemKind::stop, 40, words(5)),
                    item(5, ScriptItemKind::closing, 0, words(2))};
    source.items[1].replay = Span{16_s, 20_s};
    source.items[1].replay_speed = 0.5;
    return script::lay_out(source);
}

/// Plays what the rehearsal asks for, by a clock that goes on in steps of 20 ms.
struct Coach {
    Rehearsal rehearsal{sheet()};
    Seconds now{1000};
    std::optional<Seconds> sound; ///< where it is; none: no device
    bool device = true;
    int turn = 0;

    explicit Coach(std::size_t step = 0) {
        rehearsal.begin(now, step);
        listen();
    }
    void listen() {
        const auto& wanted = rehearsal.playback();
        if (!wanted.playing) sound.reset();
        if (wanted.playing && wanted.turn != turn && device) sound = wanted.from;
        if (wanted.playing) turn = wanted.turn;
    }
    void wait(double seconds) {
        for (int i = 0; i < std::lround(seconds * 50); ++i) {
            now += 20_ms;
            if (sound) *sound += 20_ms * rehearsal.playback().speed;
            rehearsal.look(now, sound);
            listen();
        }
    }
    void go_on() {
        rehearsal.go_on(now);
        listen();
    }
    void back() {
        rehearsal.back(now);
        listen();
    }
    [[nodiscard]] SegmentKind kind() const { return rehearsal.segment()->kind; }
    [[nodiscard]] int stop() const { return rehearsal.segment()->stop_number; }
};

} // namespace

TEST_CASE("A rehearsal goes through talk, music, halt and replay in the order of the cue sheet") {
    Coach coach;
    CHECK(coach.rehearsal.talking());
    CHECK_FALSE(coach.sound);
    coach.wait(4);
    CHECK(coach.rehearsal.talking()); // a talk ends when the coach says so, not by its plan
    coach.go_on();
    CHECK(coach.kind() == SegmentKind::play);
    CHECK(coach.sound == 0_s);
    coach.wait(19.9);
    CHECK(coach.kind() == SegmentKind::play);
    coach.wait(0.2);
    CHECK(coach.rehearsal.talking());
    CHECK(coach.stop() == 1);
    CHECK_FALSE(coach.sound);
    coach.wait(9);
    coach.go_on();
    CHECK(coach.kind() == SegmentKind::replay);
    CHECK(coach.rehearsal.playback().speed == 0.5);
    CHECK(coach.sound == 16_s);
    coach.wait(7.9);
    CHECK(coach.kind() == SegmentKind::replay);
    coach.wait(0.2);
    CHECK(coach.kind() == SegmentKind::play);
    CHECK(coach.rehearsal.playback().speed == 1);
    CHECK(coach.sound->value() == Approx(20.1).margin(0.03));
    coach.wait(20);
    CHECK(coach.stop() == 2);
    coach.wait(5);
    coach.go_on();
    coach.wait(20.1);
    CHECK(coach.rehearsal.talking());
    CHECK(coach.rehearsal.next() == nullptr);
    coach.wait(2);
    coach.go_on();
    CHECK(coach.rehearsal.state() == State::ended);
    CHECK_FALSE(coach.rehearsal.playback().playing);
    const auto& measured = coach.rehearsal.measured();
    REQUIRE(measured.size() == 4);
    CHECK(measured.at({1}).value() == Approx(4));
    CHECK(measured.at({2}).value() == Approx(9).margin(0.2));
    CHECK(measured.at({4}).value() == Approx(5).margin(0.2));
    CHECK(measured.at({5}).value() == Approx(2).margin(0.2));
}

TEST_CASE("Without sound the rehearsal goes by the clock") {
    Coach coach(1);
    coach.device = false;
    coach.sound.reset();
    coach.wait(19.9);
    CHECK(coach.kind() == SegmentKind::play);
    CHECK(coach.rehearsal.position().value() == Approx(19.9));
    coach.wait(0.2);
    CHECK(coach.stop() == 1);
    coach.go_on();
    coach.wait(7.9); // four seconds at half speed
    CHECK(coach.kind() == SegmentKind::replay);
    coach.wait(0.2);
    CHECK(coach.kind() == SegmentKind::play);
}

TEST_CASE("A pause counts neither for the talk nor for the music") {
    Coach coach;
    coach.wait(1);
    coach.rehearsal.pause(coach.now);
    coach.listen();
    coach.wait(30);
    CHECK(coach.rehearsal.state() == State::paused);
    CHECK(coach.rehearsal.elapsed(coach.now).value() == Approx(1));
    coach.rehearsal.resume(coach.now);
    coach.wait(1);
    coach.go_on();
    CHECK(coach.rehearsal.measured().at({1}).value() == Approx(2));
    coach.wait(5);
    coach.rehearsal.pause(coach.now);
    coach.listen();
    CHECK_FALSE(coach.sound);
    coach.wait(30);
    coach.rehearsal.resume(coach.now);
    coach.listen();
    CHECK(coach.sound->value() == Approx(5));
    CHECK(coach.rehearsal.elapsed(coach.now).value() == Approx(5));
}

TEST_CASE("Going back soon after a halt brings the last seconds of the music, later the talk's beginning") {
    Coach coach(2);
    coach.wait(1.9);
    coach.back();
    CHECK(coach.kind() == SegmentKind::play);
    CHECK(coach.sound == 15_s);
    coach.wait(5.1);
    CHECK(coach.stop() == 1);
    coach.wait(3);
    coach.back();
    CHECK(coach.stop() == 1);
    CHECK(coach.rehearsal.elapsed(coach.now) == 0_s);
    coach.wait(8);
    coach.go_on();
    CHECK(coach.rehearsal.measured().at({2}).value() == Approx(8));
}

TEST_CASE("Going back in music goes to its beginning, soon after that to what came before") {
    Coach coach(1);
    coach.wait(12);
    coach.back();
    CHECK(coach.sound == 0_s);
    coach.wait(1);
    coach.back();
    CHECK(coach.rehearsal.talking());
    CHECK(coach.rehearsal.step() == 0);
    coach.back();
    CHECK(coach.rehearsal.step() == 0);
}

TEST_CASE("A talk spoken again counts anew; one that was left by going back counts as before") {
    Coach coach(2);
    coach.wait(6);
    coach.go_on();
    coach.back(); // in the replay, just begun: to the talk
    CHECK(coach.stop() == 1);
    coach.wait(3);
    coach.back(); // to its beginning
    CHECK(coach.rehearsal.measured().at({2}).value() == Approx(6));
    coach.wait(4);
    coach.go_on();
    CHECK(coach.rehearsal.measured().at({2}).value() == Approx(4));
}

TEST_CASE("A slip of the key isn't a talk, and one that was broken off isn't measured") {
    Coach coach;
    coach.wait(0.4);
    coach.go_on();
    CHECK(coach.rehearsal.measured().empty());
    CHECK(coach.kind() == SegmentKind::play);
    coach.go_on(); // leaves the music for the stop
    CHECK(coach.stop() == 1);
    coach.wait(5);
    coach.rehearsal.end();
    CHECK(coach.rehearsal.state() == State::ended);
    CHECK(coach.rehearsal.measured().empty());
}

TEST_CASE("A recorded talk is as long as its recording") {
    Coach coach;
    coach.wait(3);
    coach.rehearsal.go_on(coach.now, Seconds(2.75));
    CHECK(coach.rehearsal.measured().at({1}) == Seconds(2.75));
}

TEST_CASE("An aside is due while its place sounds, and announced before") {
    Coach coach(4);
    CHECK(coach.kind() == SegmentKind::play);
    CHECK_FALSE(coach.rehearsal.aside());
    REQUIRE(coach.rehearsal.coming_aside());
    CHECK(coach.rehearsal.coming_aside()->wait.value() == Approx(5));
    coach.wait(4.9);
    CHECK_FALSE(coach.rehearsal.aside());
    coach.wait(0.2);
    REQUIRE(coach.rehearsal.aside());
    CHECK(coach.rehearsal.aside()->item == project::ScriptItemId{3});
    CHECK_FALSE(coach.rehearsal.coming_aside());
    coach.wait(2);
    CHECK_FALSE(coach.rehearsal.aside());
}

TEST_CASE("The programme runs later by what the talks took longer, and the talk that overruns now") {
    Coach coach;
    CHECK(coach.rehearsal.stops() == 2);
    CHECK(coach.rehearsal.programme_planned() == 88_s); // 60 of music, 8 again, 20 of talk
    coach.wait(2);
    CHECK(coach.rehearsal.programme(coach.now).value() == Approx(2));
    CHECK(coach.rehearsal.behind(coach.now) == 0_s);
    coach.wait(5);
    CHECK(coach.rehearsal.programme(coach.now).value() == Approx(7));
    CHECK(coach.rehearsal.behind(coach.now).value() == Approx(4));
    coach.go_on();
    coach.wait(10);
    CHECK(coach.rehearsal.programme(coach.now).value() == Approx(17));
    CHECK(coach.rehearsal.behind(coach.now).value() == Approx(4));
    coach.wait(10.1);
    coach.wait(2.9);
    coach.go_on(); // seven seconds sooner than planned
    CHECK(coach.rehearsal.behind(coach.now).value() == Approx(-3).margin(0.1));
    CHECK(coach.rehearsal.programme(coach.now).value() == Approx(30).margin(0.1));
}

TEST_CASE("The page's words say the stop, what comes, and by how much the time is over") {
    Coach coach(2);
    CHECK(step_words(coach.rehearsal).find("Stop 1 of 2: ") == 0);
    CHECK(next_words(coach.rehearsal) == "then again at half speed, 0:08");
    coach.wait(4.1);
    CHECK(step_time_words(coach.rehearsal, coach.now) == "0:04 of 0:10");
    CHECK(programme_words(coach.rehearsal, coach.now) == "Programme 0:27 of 1:28");
    coach.wait(9);
    CHECK(step_time_words(coach.rehearsal, coach.now) == "0:13, 0:03 over the planned 0:10");
    CHECK(programme_words(coach.rehearsal, coach.now) == "Programme 0:36 of 1:28, 0:03 later than planned");
    coach.go_on();
    CHECK(step_words(coach.rehearsal) == "Again at half speed");
    CHECK(next_words(coach.rehearsal) == "then 0:20 of music");
    coach.rehearsal.end();
    CHECK(sum_words(coach.rehearsal) ==
          "Measured 1 of 4 talks: 0:13 instead of 0:10. With these times the programme runs 1:31.");
    const auto talks = coach.rehearsal.talks();
    REQUIRE(talks.size() == 4);
    CHECK(difference_words(talks[0]) == "not measured");
    CHECK(difference_words(talks[1]) == "0:03 longer");
    CHECK(minutes(Seconds(3725)) == "1:02:05");
}

TEST_CASE("Measured times go into the cue sheet, as one edit that can be undone") {
    Desk desk;
    const auto stop = desk.session.edit([&](project::Project& p) {
        project::ScriptItem i = item(0, project::ScriptItemKind::stop, 2.5, words(5));
        i.performance = *desk.session.shown();
        return p.add_script_item(i);
    });
    const auto planned = [&] {
        return script::lay_out(script::gather(desk.session.project(), desk.session.source().performance));
    };
    CHECK(planned().talk_time == Rational(2)); // 5 words at 150 a minute
    Rehearsal rehearsal(planned());
    rehearsal.begin(0_s, 1);
    rehearsal.go_on(7.4_s);
    CHECK(still_spoken(desk.session, rehearsal) == rehearsal.measured());
    CHECK(store_measured(desk.session, rehearsal.measured()) == 1);
    CHECK(planned().talk_time == Rational(37, 5));
    CHECK(desk.session.undo_label() == "keep the rehearsed times");
    desk.session.undo();
    CHECK(planned().talk_time == Rational(2));
    const auto before = desk.session.undo_label();
    CHECK(store_measured(desk.session, {}) == 0);
    CHECK(store_measured(desk.session, {{{stop.value + 100}, 3_s}}) == 0);
    CHECK(desk.session.undo_label() == before);
}

TEST_CASE("A time measured for words that have been changed since isn't kept") {
    Desk desk;
    const auto stop = desk.session.edit([&](project::Project& p) {
        project::ScriptItem i = item(0, project::ScriptItemKind::stop, 2.5, words(5));
        i.performance = *desk.session.shown();
        return p.add_script_item(i);
    });
    Rehearsal rehearsal(
        script::lay_out(script::gather(desk.session.project(), desk.session.source().performance)));
    rehearsal.begin(0_s, 1);
    rehearsal.go_on(7.4_s);
    REQUIRE(rehearsal.measured().contains(stop));
    auto changed = desk.session.project().script(*desk.session.shown()).front();
    changed.text = "Other words.";
    desk.session.edit([&](project::Project& p) { p.change_script_item(changed); });
    CHECK(still_spoken(desk.session, rehearsal).empty());
}
