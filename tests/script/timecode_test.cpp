// Timecode against SMPTE ST 12-1: drop-frame numbers as in public tests of it (OpenTimelineIO's opentime
// tests, a published drop-code converter), the others computed from the rule (numbers 0 and 1 are left out
// each minute but every tenth).
#include "base/error.h"
#include "script/timecode.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::script;

namespace {

const Rational kNtsc(30000, 1001);

struct Row {
    std::int64_t frame;
    const char* drop;
    const char* plain;
};

const Row kRows[] = {
    {0, "00:00:00;00", "00:00:00:00"},       {1799, "00:00:59;29", "00:00:59:29"},
    {1800, "00:01:00;02", "00:01:00:00"},    {3598, "00:02:00;02", "00:01:59:28"},
    {10789, "00:05:59;29", "00:05:59:19"},   {10790, "00:06:00;02", "00:05:59:20"},
    {17981, "00:09:59;29", "00:09:59:11"},   {17982, "00:10:00;00", "00:09:59:12"},
    {17983, "00:10:00;01", "00:09:59:13"},   {107892, "01:00:00;00", "00:59:56:12"},
    {1078920, "10:00:00;00", "09:59:24:00"}, {1084319, "10:03:00;05", "10:02:23:29"},
    {2589407, "23:59:59;29", "23:58:33:17"},
};

} // namespace

TEST_CASE("frames at 29.97 read as the timecode of SMPTE ST 12-1, drop-frame and not") {
    for (const Row& row : kRows) {
        CHECK(timecode(row.frame, kNtsc, true) == row.drop);
        CHECK(timecode(row.frame, kNtsc, false) == row.plain);
    }
}

TEST_CASE("timecode of SMPTE ST 12-1 at 29.97 reads back as the same frames") {
    for (const Row& row : kRows) {
        CHECK(frame_of_timecode(row.drop, kNtsc) == row.frame);
        CHECK(frame_of_timecode(row.plain, kNtsc) == row.frame);
    }
}

TEST_CASE("a drop-frame day has 2589408 frames and then starts again") {
    CHECK(timecode(2589408, kNtsc, true) == "00:00:00;00");
    CHECK(timecode(-1, kNtsc, true) == "23:59:59;29");
}

TEST_CASE("at 59.94 the first four numbers of a minute are skipped") {
    const Rational rate(60000, 1001);
    CHECK(timecode(3600, rate, true) == "00:01:00;04");
    CHECK(timecode(35964, rate, true) == "00:10:00;00");
    CHECK(frame_of_timecode("00:01:00;04", rate) == 3600);
    CHECK_THROWS_AS(frame_of_timecode("00:01:00;03", rate), Error);
}

TEST_CASE("every frame of an hour comes back from its drop-frame timecode, and each one is a new one") {
    std::string last;
    for (std::int64_t f = 0; f < 107892; ++f) {
        const std::string text = timecode(f, kNtsc, true);
        if (frame_of_timecode(text, kNtsc) != f || text <= last) FAIL("frame " << f << " reads " << text);
        last = text;
    }
    CHECK(last == "00:59:59;29");
}

TEST_CASE("drop-frame is counted at 29.97 and 59.94 only") {
    CHECK(can_drop_frames(kNtsc));
    CHECK(can_drop_frames(Rational(60000, 1001)));
    for (const Rational rate :
         {Rational(30), Rational(25), Rational(24000, 1001), Rational(60), Rational(2997, 100)})
        CHECK_FALSE(can_drop_frames(rate));
    CHECK(timecode(1500, 25, true) == "00:01:00:00");
    CHECK(timecode(1440, Rational(24000, 1001), true) == "00:01:00:00");
}

TEST_CASE("timecode that no frame has is refused") {
    for (const char* text : {"00:01:00;00", "00:01:00;01", "00:59:00;00", "24:00:00:00", "00:60:00:00",
                             "00:00:60:00", "00:00:00:30", "0:00:00:00", "00:00:00", "00:00:00:0x", "",
                             "00.00:00:00", "00;00;00;00", "-1:00:00:00"})
        CHECK_THROWS_AS(frame_of_timecode(text, kNtsc), Error);
    CHECK_THROWS_AS(frame_of_timecode("00:00:10;00", 25), Error);
    CHECK_THROWS_AS(timecode(0, 0, false), Error);
    CHECK_THROWS_AS(timecode(0, Rational(-25), false), Error);
}
