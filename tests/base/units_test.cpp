// Equal temperament against ISO 16 (A4 = 440 Hz) and the formula f = 440 x 2^((m - 69) / 12).
#include "base/units.h"

#include <catch2/catch.hpp>

using namespace luft;

TEST_CASE("equal temperament gives the note table of ISO 16's A4 = 440 Hz") {
    struct Row {
        int midi;
        double hz;
    };
    // Computed from the formula; A4 and MIDI 69 by ISO 16 (1955, reaffirmed 1975).
    for (const Row& row : {Row{40, 82.407},
                           {45, 110.000},
                           {48, 130.813},
                           {55, 195.998},
                           {57, 220.000},
                           {60, 261.626},
                           {62, 293.665},
                           {64, 329.628},
                           {65, 349.228},
                           {67, 391.995},
                           {69, 440.000},
                           {72, 523.251},
                           {76, 659.255},
                           {78, 739.989},
                           {84, 1046.502}}) {
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
