// Programme time against media time: order, lengths, exactness.
#include "base/error.h"
#include "script/cue_sheet.h"
#include "script/script_material.h"
#include "script/timecode.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::script;
using namespace luft::script::testing;
using project::ScriptItemKind;

namespace {

Rational length(const Segment& s) {
    return s.programme_end - s.programme_start;
}

/// Segments follow each other without a gap, on whole frames, and add up to the running time.
void check_whole(const CueSheet& sheet) {
    Rational at;
    for (const Segment& s : sheet.segments) {
        CHECK(s.programme_start == at);
        CHECK(s.programme_end > s.programme_start);
        CHECK((s.programme_end * sheet.frame_rate).den() == 1);
        CHECK((s.media_start * sheet.frame_rate).den() == 1);
        CHECK((s.media_end * sheet.frame_rate).den() == 1);
        if (s.kind == SegmentKind::play) CHECK(length(s) == s.media_end - s.media_start);
        at = s.programme_end;
    }
    CHECK(at == sheet.running_time);
    CHECK(sheet.talk_time + sheet.quoted == sheet.running_time);
}

} // namespace

TEST_CASE("a script is laid out as opening, music, halt, replay, music and closing") {
    Source source = material();
    auto stop = item(2, ScriptItemKind::stop, 12, words(15));
    stop.replay = Span{Seconds(6), Seconds(9)};
    stop.replay_speed = 0.5;
    stop.resume = Seconds(15);
    source.items = {item(1, ScriptItemKind::opening, 0, words(25)), stop,
                    item(3, ScriptItemKind::closing, 60, words(5))};
    const CueSheet sheet = lay_out(source);
    check_whole(sheet);
    REQUIRE(sheet.segments.size() == 6);
    // 150 words a minute: 25 words last 10 s, 15 last 6 s, 5 last 2 s.
    CHECK(sheet.segments[0].kind == SegmentKind::talk);
    CHECK(length(sheet.segments[0]) == Rational(10));
    CHECK(sheet.segments[0].media_end == Rational(0));
    CHECK(sheet.segments[1].kind == SegmentKind::play);
    CHECK(sheet.segments[1].media_end == Rational(12));
    CHECK(length(sheet.segments[2]) == Rational(6));
    CHECK(sheet.segments[2].media_start == Rational(12));
    CHECK(sheet.segments[2].stop_number == 1);
    CHECK(sheet.segments[3].kind == SegmentKind::replay);
    CHECK(sheet.segments[3].speed == Rational(1, 2));
    CHECK(length(sheet.segments[3]) == Rational(6));
    CHECK(sheet.segments[4].media_start == Rational(15));
    CHECK(sheet.segments[4].media_end == Rational(60));
    CHECK(sheet.segments[5].media_start == Rational(60));
    CHECK(sheet.running_time == Rational(10 + 12 + 6 + 6 + 45 + 2));
    CHECK(sheet.talk_time == Rational(18));
    CHECK(sheet.quoted == Rational(63));
    CHECK(sheet.quoted_once == Rational(57)); // 0-12 and 15-60; the replay was heard before
    CHECK(sheet.quoted_share == Approx(0.95));
    CHECK(sheet.longest_quote == Rational(51)); // replay and music after it, with no word between
}

TEST_CASE("an hour at 29.97 with 200 stops ends on the exact frame") {
    Source source = material();
    source.settings.frame_rate_num = 30000;
    source.settings.frame_rate_den = 1001;
    source.performance.facts.duration = Seconds(3600);
    std::int64_t talk_frames = 0;
    for (int i = 0; i < 200; ++i) {
        const int n = 7 + i % 23;
        source.items.push_back(item(i + 1, ScriptItemKind::stop, 17.77 * (i + 1), words(n)));
        // n words at 150 a minute are 2n/5 s; in frames, rounded up: ceil(2n/5 x 30000/1001).
        talk_frames += (12000 * n + 1000) / 1001;
    }
    const CueSheet sheet = lay_out(source);
    check_whole(sheet);
    CHECK(sheet.drop_frame);
    // An hour holds 107892.1 frames of 1001/30000 s (SMPTE ST 12-1: 107892 an hour of drop-frame timecode).
    CHECK(sheet.running_time == Rational(talk_frames + 107892) * Rational(1001, 30000));
    CHECK(sheet.quoted == Rational(107892) * Rational(1001, 30000));
    std::int64_t frames = 0;
    for (const Segment& s : sheet.segments) {
        const Rational start = s.programme_start * sheet.frame_rate;
        CHECK(start == Rational(frames));
        CHECK(frame_of_timecode(timecode(frames, sheet.frame_rate, true), sheet.frame_rate) == frames);
        frames += (length(s) * sheet.frame_rate).num();
    }
    CHECK(frames == talk_frames + 107892);
}

TEST_CASE("stops out of order are laid out by their place in the recording") {
    Source source = material();
    source.items = {item(1, ScriptItemKind::stop, 24, words(5)),
                    item(2, ScriptItemKind::stop, 12, words(10))};
    const CueSheet sheet = lay_out(source);
    check_whole(sheet);
    REQUIRE(sheet.segments.size() == 5);
    CHECK(sheet.segments[1].item == project::ScriptItemId{2});
    CHECK(sheet.segments[1].stop_number == 1);
    CHECK(sheet.segments[3].item == project::ScriptItemId{1});
    CHECK(sheet.segments[3].stop_number == 2);
}

TEST_CASE("several stops at one place are one halt with their talks in the script's order") {
    Source source = material();
    source.items = {item(1, ScriptItemKind::stop, 12, "first"), item(2, ScriptItemKind::stop, 12, "second")};
    const CueSheet sheet = lay_out(source);
    check_whole(sheet);
    REQUIRE(sheet.segments.size() == 4);
    CHECK(sheet.segments[1].text == "first");
    CHECK(sheet.segments[2].text == "second");
    CHECK(sheet.segments[3].media_start == Rational(12));
    for (const Warning& w : sheet.warnings)
        CHECK(w.kind != WarningKind::stops_too_close);
}

TEST_CASE("a stop that goes back plays the part again, and counts it once") {
    Source source = material();
    auto stop = item(1, ScriptItemKind::stop, 24, words(5));
    stop.resume = Seconds(15);
    source.items = {stop};
    const CueSheet sheet = lay_out(source);
    check_whole(sheet);
    CHECK(sheet.quoted == Rational(24 + 45));
    CHECK(sheet.quoted_once == Rational(60));
    CHECK(sheet.quoted_share == Approx(1.0));
}

TEST_CASE("a stop in a part that an earlier one skips is talked about without music before it") {
    Source source = material();
    auto first = item(1, ScriptItemKind::stop, 12, words(5));
    first.resume = Seconds(34);
    source.items = {first, item(2, ScriptItemKind::stop, 24, words(5))};
    const CueSheet sheet = lay_out(source);
    check_whole(sheet);
    REQUIRE(sheet.segments.size() == 4);
    CHECK(sheet.segments[2].media_start == Rational(24));
    CHECK(sheet.segments[3].media_start == Rational(34));
    CHECK(std::count_if(sheet.warnings.begin(), sheet.warnings.end(), [](const Warning& w) {
              return w.kind == WarningKind::stop_outside && w.item == project::ScriptItemId{2};
          }) == 1);
}

TEST_CASE("a script without items plays the recording once") {
    const CueSheet sheet = lay_out(material());
    check_whole(sheet);
    REQUIRE(sheet.segments.size() == 1);
    CHECK(sheet.running_time == Rational(60));
    CHECK(sheet.longest_quote == Rational(60));
    CHECK(sheet.talk_time == Rational(0));
}

TEST_CASE("a recording of no length gives a programme of talk alone") {
    Source source = material();
    source.performance.facts.duration = Seconds(0);
    CHECK(lay_out(source).segments.empty());
    source.items = {item(1, ScriptItemKind::opening, 0, words(25)),
                    item(2, ScriptItemKind::stop, 5, words(5))};
    const CueSheet sheet = lay_out(source);
    check_whole(sheet);
    CHECK(sheet.running_time == Rational(12));
    CHECK(sheet.quoted_share == 0);
}

TEST_CASE("a rehearsed time takes the place of the words' estimate, up to whole frames") {
    Source source = material();
    auto opening = item(1, ScriptItemKind::opening, 0, words(100));
    opening.rehearsed = Seconds(7.01);
    source.items = {opening};
    CHECK(lay_out(source).talk_time == Rational(176, 25)); // 175.25 frames, rounded up
}

TEST_CASE("300 words last 120 s at 150 words a minute and 102.9 s at 175") {
    Source source = material();
    source.items = {item(1, ScriptItemKind::opening, 0, words(300))};
    CHECK(lay_out(source).talk_time == Rational(120));
    source.settings.words_per_minute = 175;
    CHECK(lay_out(source).talk_time.as_double() == Approx(102.857).margin(0.041)); // one frame
}

TEST_CASE("the programme runs at the video's rate unless one is set, and at 25 without video") {
    Source source = material();
    CHECK(lay_out(source).frame_rate == Rational(25));
    source.performance.facts.has_video = true;
    source.performance.facts.frame_rate_num = 60000;
    source.performance.facts.frame_rate_den = 1001;
    CHECK(lay_out(source).frame_rate == Rational(60000, 1001));
    CHECK(lay_out(source).drop_frame);
    source.performance.facts.frame_rate_num = 2983; // a phone's average of a varying rate
    source.performance.facts.frame_rate_den = 100;
    CHECK(lay_out(source).frame_rate == Rational(30000, 1001));
    source.performance.facts.frame_rate_num = 15;
    source.performance.facts.frame_rate_den = 1;
    CHECK(lay_out(source).frame_rate == Rational(15));
    source.settings.frame_rate_num = 24;
    CHECK(lay_out(source).frame_rate == Rational(24));
    CHECK_FALSE(lay_out(source).drop_frame);
}

TEST_CASE("an average of a varying rate gives the trade's rate next to it, or one that exact time can hold") {
    struct Case {
        std::int64_t num, den;
        Rational expected;
    };
    const Case cases[] = {
        {2397, 100, Rational(24000, 1001)},
        {24050, 1001, 24},
        {1799100, 71964, 25},
        {2997003, 100000, Rational(30000, 1001)},
        {30021, 1000, 30},
        {49'870'001, 1'000'000, 50},
        {59'900'000, 1'000'000, Rational(60000, 1001)},
        {2'147'483'629, 35'791'393, 60},
        {15, 1, 15},
        {25, 2, Rational(25, 2)},
        {2'147'483'647, 79'536'431, 27},
        {1'999'999'973, 55'555'555, 36},
    };
    for (const auto& [num, den, expected] : cases) {
        INFO(num << "/" << den);
        Source source = material();
        source.performance.facts.has_video = true;
        source.performance.facts.frame_rate_num = num;
        source.performance.facts.frame_rate_den = den;
        source.performance.facts.duration = Seconds(10 * 3600);
        for (int i = 0; i < 100; ++i)
            source.items.push_back(item(i + 1, ScriptItemKind::stop, 355.555501 * i, words(7 + i)));
        const CueSheet sheet = lay_out(source);
        check_whole(sheet);
        CHECK(sheet.frame_rate.as_double() == Approx(expected.as_double()).epsilon(1e-4));
        CHECK(sheet.frame_rate.den() <= 1001);
    }
}

TEST_CASE("playback can end before the recording does") {
    Source source = material();
    source.items = {item(1, ScriptItemKind::closing, 44, words(5))};
    const CueSheet sheet = lay_out(source);
    check_whole(sheet);
    CHECK(sheet.quoted == Rational(44));
    CHECK(sheet.segments.back().media_start == Rational(44));
}

TEST_CASE("settings and items that make no sense are refused") {
    Source source = material();
    auto stop = item(1, ScriptItemKind::stop, 12, "word");
    stop.replay = Span{Seconds(1), Seconds(2)};
    for (const double speed : {0.0, 0.2, 1.01, -1.0, std::nan("")}) {
        stop.replay_speed = speed;
        source.items = {stop};
        CHECK_THROWS_AS(lay_out(source), Error);
    }
    source.items = {item(1, ScriptItemKind::stop, std::nan(""), "word")};
    CHECK_THROWS_AS(lay_out(source), Error);
    source.items = {item(1, ScriptItemKind::stop, 12, "word")};
    for (const double wpm : {0.0, -150.0, 1e9, std::nan("")}) {
        source.settings.words_per_minute = wpm;
        CHECK_THROWS_AS(lay_out(source), Error);
    }
    source.settings.words_per_minute = 150;
    source.settings.frame_rate_num = -25;
    CHECK_THROWS_AS(lay_out(source), Error);
}
