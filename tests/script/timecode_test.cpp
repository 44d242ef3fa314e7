// Timecode against SMPTE ST 12-1: published values, and a counter that goes label by label.
#include "base/error.h"
#include "reference/timecode.h"
#include "script/timecode.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::script;

namespace {

const Rational kNtsc(30000, 1001);

using reference::kTimecodes;
using reference::TimecodeRow;

} // namespace

TEST_CASE("frames at 29.97 read as the timecode of SMPTE ST 12-1, drop-frame and not") {
    for (const TimecodeRow& row : kTimecodes) {
        CHECK(timecode(row.frame, kNtsc, true) == row.drop);
        CHECK(timecode(row.frame, kNtsc, false) == row.plain);
    }
}

TEST_CASE("timecode of SMPTE ST 12-1 at 29.97 reads back as the same frames") {
    for (const TimecodeRow& row : kTimecodes) {
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

TEST_CASE("at every rate each frame of two hours has the label that a counter by the rule gives it") {
    struct Case {
        Rational rate;
        int base, dropped;
    };
    for (const auto& [rate, base, dropped] :
         {Case{Rational(24000, 1001), 24, 0}, Case{24, 24, 0}, Case{25, 25, 0}, Case{kNtsc, 30, 0},
          Case{kNtsc, 30, 2}, Case{30, 30, 0}, Case{50, 50, 0}, Case{Rational(60000, 1001), 60, 0},
          Case{Rational(60000, 1001), 60, 4}, Case{60, 60, 0}}) {
        reference::FrameCounter counter(base, dropped);
        for (std::int64_t f = 0; f < std::int64_t{7200} * base; ++f, counter.next()) {
            const std::string label = counter.label();
            if (timecode(f, rate, dropped > 0) != label || frame_of_timecode(label, rate) != f)
                FAIL("frame " << f << " at base " << base << " isn't " << label);
        }
    }
}

TEST_CASE("the counter that the tests count by gives the published labels") {
    reference::FrameCounter drop(30, 2), plain(30, 0);
    std::size_t row = 0;
    for (std::int64_t f = 0; f <= kTimecodes.back().frame; ++f, drop.next(), plain.next())
        if (f == kTimecodes[row].frame) {
            CHECK(drop.label() == kTimecodes[row].drop);
            CHECK(plain.label() == kTimecodes[row].plain);
            ++row;
        }
    CHECK(row == kTimecodes.size());
}
