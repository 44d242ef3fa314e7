// Equal temperament against ISO 16 (A4 = 440 Hz) and the formula f = 440 x 2^((m - 69) / 12).
#include "base/units.h"
#include "reference/notes.h"

#include <catch2/catch.hpp>

using namespace luft;

TEST_CASE("equal temperament gives the note table of ISO 16's A4 = 440 Hz") {
    for (const reference::NoteRow& row : reference::kNotes) {
        CHECK(frequency_of(MidiPitch(row.midi)).value() == Approx(row.hz).margin(0.0006));
        CHECK(pitch_of(Hertz(row.hz)).value() == Approx(row.midi).margin(0.0002));
    }
}

TEST_CASE("an interval in cents is 1200 log2 of the frequency ratio") {
    CHECK(interval(Hertz(2), Hertz(3)).value() == Approx(701.955).margin(0.001));
    CHECK(interval(Hertz(4), Hertz(5)).value() == Approx(386.314).margin(0.001));
    CHECK(interval(Hertz(80), Hertz(81)).value() == Approx(21.506).margin(0.001));
    CHECK(interval(Hertz(440), Hertz(442)).value() == Approx(7.85).margin(0.005));
    CHECK(interval(Hertz(440), Hertz(415)).value() == Approx(-101.27).margin(0.005));
}

TEST_CASE("a frame of a curve is centred at ten milliseconds times its number") {
    CHECK(time_of(FrameIndex{100}).value() == Approx(1.0));
    CHECK(nearest_frame(Seconds(1.0049)).value == 100);
    CHECK(nearest_frame(Seconds(1.0051)).value == 101);
    CHECK(nearest_frame(Seconds(-0.014)).value == -1);
}

TEST_CASE("a span holds its start but not its end, and touching spans don't overlap") {
    const Span s{Seconds(1), Seconds(2)};
    CHECK(s.contains(Seconds(1)));
    CHECK_FALSE(s.contains(Seconds(2)));
    CHECK(s.overlaps({Seconds(1.5), Seconds(9)}));
    CHECK_FALSE(s.overlaps({Seconds(2), Seconds(3)}));
    CHECK_FALSE(s.overlaps({Seconds(0), Seconds(1)}));
    CHECK(s.middle() == Seconds(1.5));
}

TEST_CASE("levels of power and amplitude agree, and nothing at all has a floor instead of minus infinity") {
    CHECK(power_level(0.25).value() == Approx(amplitude_level(0.5).value()));
    CHECK(amplitude_level(0.5).value() == Approx(-6.0206).margin(1e-4)); // 20 log10 0.5
    CHECK(amplitude_of(Decibels(-6.0206)) == Approx(0.5).margin(1e-5));
    CHECK(power_level(0) == Decibels(-200));
    CHECK(amplitude_level(0) == Decibels(-200));
}
