// A stop that quotes another performance, in the window: offered, listed, rehearsed.
#include "desk/work/rehearsal.h"
#include "desk/work/rehearsal_words.h"
#include "desk/work/script_rows.h"
#include "desk/work/talk_choices.h"
#include "script/script_material.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::desk;
using namespace luft::literals;
using namespace luft::script::testing;
using project::Quote;
using project::ScriptItemKind;
using script::SegmentKind;

namespace {

/// A stop at 0:12 about a moment that is compared with 11 to 13 s of B; B's phrases are 5 to 14 and 17 to 26
/// s.
script::Source compared_stop() {
    script::Source source = compared({item(1, ScriptItemKind::stop, 12, words(5))});
    source.moments = {moment(7, 9, 11, project::Verdict::watch, {})};
    source.moments[0].beside = Quote{{2}, {11_s, 13_s}};
    source.items[0].moment = source.moments[0].id;
    return source;
}

} // namespace

TEST_CASE(
    "a stop can quote nothing, its moment's counterpart, or the whole phrase of the other performance") {
    auto source = compared_stop();
    const auto choices = quotes(source, source.items[0]);
    REQUIRE(choices.size() == 3);
    CHECK_FALSE(choices[0].quote);
    CHECK(choices[1].quote == Quote{{2}, {Seconds(10.5), Seconds(13.5)}});
    CHECK(choices[1].words == "the same place in B, 0:10.5 to 0:13.5");
    CHECK(choices[2].quote == Quote{{2}, {Seconds(4.5), 14_s}}); // with its breath
    source.items[0].quote = Quote{{2}, {1_s, 2_s}};
    CHECK(quotes(source, source.items[0]).back().quote == source.items[0].quote);
}

TEST_CASE("what a stop quotes stays among the choices when its moment is compared no longer") {
    auto source = compared_stop();
    source.moments[0].beside.reset();
    CHECK(quotes(source, source.items[0]).size() == 1);
    source.items[0].quote = Quote{{2}, {18_s, 20_s}};
    const auto choices = quotes(source, source.items[0]);
    REQUIRE(choices.size() == 3);
    CHECK(choices[1].words == "a span of B, 0:18.0 to 0:20.0");
    CHECK(choices[2].quote == Quote{{2}, {Seconds(16.5), 26_s}});
}

TEST_CASE("a span of another performance is typed with its label, or without where there is only one") {
    auto source = compared_stop();
    CHECK(typed_quote(source, "B 0:05-0:07.5") == Quote{{2}, {5_s, Seconds(7.5)}});
    CHECK(typed_quote(source, "5-7.5 ") == Quote{{2}, {5_s, Seconds(7.5)}});
    for (const char* text : {"", "B", "C 5-7", "B 7-5", "B 5", "B5-7", "A 5-7"}) {
        INFO(text);
        CHECK_FALSE(typed_quote(source, text));
    }
    source.others.push_back(source.others[0]);
    source.others[1].performance.id = {3};
    source.others[1].performance.label = "live in Ulm";
    CHECK_FALSE(typed_quote(source, "5-7"));
    const auto quote = typed_quote(source, "live in Ulm 0:05.0-0:07.0");
    REQUIRE(quote);
    CHECK(quote->performance == project::PerformanceId{3});
    CHECK(quote_to_type(source, quote) == "live in Ulm 0:05.0-0:07.0");
}

TEST_CASE("a stop's row says what is heard after its talk: the other performance, then the own one") {
    auto source = compared_stop();
    source.items[0].quote = Quote{{2}, {10_s, 13_s}};
    const auto after = [&] { return script_rows(source, script::lay_out(source)).at(1).after; };
    CHECK(after() == "then plays B 0:10.0 to 0:13.0");
    source.items[0].replay = Span{9_s, 11_s};
    source.items[0].replay_speed = 0.5;
    CHECK(after() == "then plays B 0:10.0 to 0:13.0 and 0:09.0 to 0:11.0 again at 50 %");
}

TEST_CASE("a quote that begins a stretch too long is warned about at its stop's row") {
    auto source = compared_stop();
    source.items[0].quote = Quote{{2}, {5_s, 35_s}};
    source.settings.longest_quote = 40_s;
    const auto sheet = script::lay_out(source);
    const auto rows = script_rows(source, sheet);
    REQUIRE(rows.at(1).warnings.size() == 1);
    CHECK(sheet.warnings[rows[1].warnings[0]].kind == script::WarningKind::quote_too_long);
    CHECK(warnings_on_the_whole(rows, sheet).empty());
}

TEST_CASE("a rehearsal waits in silence for as long as the other recording plays, and then goes on") {
    auto source = compared_stop();
    source.items[0].quote = Quote{{2}, {10_s, 13_s}};
    source.items[0].replay_speed = 0.5; // 6 s
    Rehearsal rehearsal(script::lay_out(source));
    Seconds now{1000};
    rehearsal.begin(now, 1);
    REQUIRE(rehearsal.talking());
    CHECK(next_words(rehearsal) == "then compare at half speed: B (Ilse Brandt), 0:06");
    rehearsal.go_on(now);
    CHECK(rehearsal.segment()->kind == SegmentKind::quote);
    CHECK(rehearsal.elsewhere());
    CHECK(step_words(rehearsal) == "Compare at half speed: B (Ilse Brandt)");
    CHECK_FALSE(rehearsal.playback().playing);
    CHECK(rehearsal.planned() == 6_s);
    const auto wait = [&](double seconds) { // the own sound stands where it halted
        for (int i = 0; i < std::lround(seconds * 50); ++i)
            rehearsal.look(now += 20_ms, 12_s);
    };
    wait(3);
    CHECK(rehearsal.elapsed(now).value() == Approx(3).margin(0.05));
    rehearsal.pause(now);
    wait(5);
    rehearsal.resume(now);
    CHECK_FALSE(rehearsal.playback().playing);
    wait(2.9);
    CHECK(rehearsal.elsewhere());
    wait(0.2);
    CHECK(rehearsal.segment()->kind == SegmentKind::play);
    CHECK(rehearsal.playback().playing);
    CHECK(rehearsal.playback().from == 12_s);
}
