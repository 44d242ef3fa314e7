// The metric itself, on an example worked out by hand from its published rules.
#include "reference/melody_metric.h"

#include <catch2/catch.hpp>

#include <array>

using namespace luft;

TEST_CASE("the melody metric gives the numbers of the example worked out by hand") {
    // Ten frames; 0 = unvoiced, negative = called unvoiced but with a guess at the pitch.
    constexpr std::array<double, 10> kTruth{220, 220, 220, 220, 0, 0, 440, 440, 440, 440};
    constexpr std::array<double, 10> kSaid{220, 226, 440, -220, 0, 110, 440, 452, 453, 0};
    reference::MelodyTally tally;
    for (std::size_t i = 0; i < kTruth.size(); ++i)
        tally.add(kTruth[i], kSaid[i]);
    const auto score = tally.score();
    CHECK(score.voicing_recall == Approx(0.75));
    CHECK(score.voicing_false_alarm == Approx(0.5));
    CHECK(score.raw_pitch == Approx(0.625));
    CHECK(score.raw_chroma == Approx(0.75));
    CHECK(score.overall == Approx(0.5));
}

TEST_CASE("the melody metric asks for strictly less than 50 cents") {
    const auto raw = [](double cents) {
        reference::MelodyTally tally;
        tally.add(220, 220 * std::exp2(cents / 1200));
        return tally.score().raw_pitch;
    };
    CHECK(raw(49.99) == 1);
    CHECK(raw(50.01) == 0);
    CHECK(raw(-49.99) == 1);
}
