// Where frames of sound are put: stamps in samples at 1000 a second, so that a sample is a millisecond.
#include "media/timeline.h"

#include <catch2/catch.hpp>

using luft::SampleRate;
using luft::Seconds;
using luft::media::Timeline;

namespace {

Timeline at_1000() {
    return Timeline(SampleRate{1000}, Seconds(0.001));
}

} // namespace

TEST_CASE("frames whose stamps follow each other are put side by side") {
    Timeline line = at_1000();
    for (int i = 0; i < 10; ++i) {
        const auto place = line.place(i * 20, 20, (i + 1) * 20);
        CHECK(place.silence == 0);
        CHECK(place.cut == 0);
    }
    CHECK(line.next() == 200);
}

TEST_CASE("a late start becomes silence of the same length") {
    Timeline line = at_1000();
    CHECK(line.place(750, 20, 770).silence == 750);
    CHECK(line.next() == 770);
}

TEST_CASE("what stands before time 0 is cut, to the sample") {
    Timeline line = at_1000();
    CHECK(line.place(-50, 20, -30).cut == 20);
    CHECK(line.place(-30, 20, -10).cut == 20);
    CHECK(line.place(-10, 20, 10).cut == 10);
    CHECK(line.place(10, 20, 30).cut == 0);
    CHECK(line.next() == 30);
}

TEST_CASE("a coarse clock's rounding of the first stamp is undone where the encoder's delay is known") {
    Timeline line(SampleRate{48000}, Seconds(0.001), 1024); // 1024 samples are 21.33 ms, the clock says 21
    CHECK(line.place(-1008, 1024, 0).cut == 1024);
    CHECK(line.place(0, 1024, 1008).cut == 0);
    CHECK(line.next() == 1024);
}

TEST_CASE("a gap is filled, and what comes after it stands where its stamp says") {
    Timeline line = at_1000();
    line.place(0, 100, 100);
    CHECK(line.place(100, 100, 350).silence == 0);
    CHECK(line.place(350, 100, 450).silence == 150);
    CHECK(line.next() == 450);
}

TEST_CASE("an overlap is cut from the later frame") {
    Timeline line = at_1000();
    line.place(0, 100, 100);
    CHECK(line.place(60, 100, 160).cut == 40);
    CHECK(line.place(100, 30, 130).cut == 30); // lies wholly in what was given
    CHECK(line.next() == 160);
}

TEST_CASE("rounding of up to 5 ms is no gap, and doesn't add up") {
    Timeline line = at_1000();
    line.place(0, 20, 20);
    for (int i = 1; i < 100; ++i) {
        const int wobble = (i * 7) % 11 - 5;
        const auto place = line.place(i * 20 + wobble, 20, (i + 1) * 20);
        CHECK(place.silence == 0);
        CHECK(place.cut == 0);
    }
    // A clock that runs slow by 1 ms a frame is followed, a few milliseconds at a time.
    std::int64_t filled = 0;
    for (int i = 0; i < 100; ++i)
        filled += line.place(2000 + i * 21, 20, 2000 + (i + 1) * 21).silence;
    CHECK(filled >= 94);
    CHECK(filled <= 100);
}

TEST_CASE("a single stamp that the next one gives the lie is ignored") {
    Timeline line = at_1000();
    line.place(0, 20, 20);
    const auto place = line.place(35, 20, 40);
    CHECK(place.silence == 0);
    CHECK(line.place(40, 20, 60).cut == 0);
    CHECK(line.next() == 60);
}

TEST_CASE("a leap of the clock by hours, forward or back, puts in no silence and drops no sound") {
    for (const std::int64_t leap :
         {std::int64_t{36'000'000}, std::int64_t{-36'000'000}, std::int64_t{1} << 49}) {
        Timeline line = at_1000();
        line.place(0, 1000, 1000);
        const auto place = line.place(1000 + leap, 100, 1100 + leap);
        CHECK(place.silence == 0);
        CHECK(place.cut == 0);
        const auto later =
            line.place(1100 + leap + 200, 100, std::nullopt); // gaps count on the new clock, too
        CHECK(later.silence == 200);
        CHECK(line.next() == 1400);
    }
}

TEST_CASE("all silence put in together stays under half an hour, however often the clock leaps") {
    Timeline line = at_1000();
    std::int64_t stamp = 0;
    std::int64_t silence = 0;
    for (int i = 0; i < 1000; ++i, stamp += 500'000)
        silence += line.place(stamp, 20, stamp + 500'000).silence;
    CHECK(silence <= 1'800'000);
    CHECK(silence >= 1'300'000);
}

TEST_CASE("frames without a stamp follow the one before") {
    Timeline line = at_1000();
    line.place(100, 20, std::nullopt);
    CHECK(line.place(std::nullopt, 20, std::nullopt).silence == 0);
    CHECK(line.next() == 140);
}
