// What pitch alone says about the register.
#include "marks/passaggio.h"
#include "marks/voice_breaks.h"

#include <catch2/catch.hpp>

#include <numbers>

using namespace luft;
using namespace luft::marks;

namespace {

struct Samples {
    std::vector<double> pitch, head;
};

/// Twenty samples on each pitch from 50 to 69; `share` has how many of ten are in head register.
Samples on_pitches(const std::function<int(int pitch)>& share) {
    Samples s;
    for (int p = 50; p < 70; ++p)
        for (int k = 0; k < 20; ++k) {
            s.pitch.push_back(p);
            s.head.push_back(k % 10 < share(p) ? 1 : 0);
        }
    return s;
}

Passaggio fitted(const Samples& s) {
    Passaggio passaggio(59.5);
    for (int step = 0; step < 3; ++step)
        passaggio.fit(s.pitch, s.head);
    return passaggio;
}

} // namespace

TEST_CASE("where a singer changes register at one pitch, the odds are even there and grow to both sides") {
    const Passaggio p = fitted(on_pitches([](int pitch) { return pitch >= 62 ? 10 : 0; }));
    CHECK(p.head_odds(60) < 0); // even within a semitone and a half of 61.5, for all that the slope is held
    CHECK(p.head_odds(62.5) > 0);
    CHECK(p.head_odds(66) > 2);
    CHECK(p.head_odds(57) < -2);
}

TEST_CASE("pitch never decides by itself: an octave from the passaggio its odds are no more than 4") {
    const Passaggio p = fitted(on_pitches([](int pitch) { return pitch >= 62 ? 10 : 0; }));
    CHECK(p.head_odds(90) == Approx(4));
    CHECK(p.head_odds(30) == Approx(-4));
}

TEST_CASE("where both registers are used on every pitch, pitch says next to nothing") {
    const Passaggio p = fitted(on_pitches([](int) { return 5; }));
    CHECK(std::abs(p.head_odds(51)) < 0.5);
    CHECK(std::abs(p.head_odds(69)) < 0.5);
}

TEST_CASE("a register that is called head but lies lower is not taken for a rule") {
    const Passaggio p = fitted(on_pitches([](int pitch) { return pitch < 60 ? 10 : 0; }));
    CHECK(p.head_odds(69) >= p.head_odds(51));
    CHECK(p.head_odds(69) - p.head_odds(51) < 0.5);
}

namespace {

/// A second on 220 Hz at -20 dB; around 0.5 s the level dips and the pitch bends as told.
voice::Curves held(double dip_db, double bend_cents) {
    voice::Curves c;
    c.f0 = Curve<Hertz>(100), c.level = Curve<Decibels>(100);
    for (std::size_t i = 0; i < 100; ++i) {
        const double x = (static_cast<double>(i) - 50) / 4.5;
        const double bump = std::abs(x) < 1 ? 0.5 + 0.5 * std::cos(std::numbers::pi * x) : 0;
        c.f0.set(i, Hertz(220 * std::exp2(bump * bend_cents / 1200)));
        c.level.set(i, Decibels(-20 - bump * dip_db));
    }
    return c;
}

bool breaks(const voice::Curves& c) {
    return std::ranges::count(find_breaks(c, 0, 100), true) > 0;
}

} // namespace

TEST_CASE("a voice breaks where its level dips and its pitch bends, upwards or downwards, and at that time") {
    for (const double bend : {120.0, -120.0}) {
        const auto found = find_breaks(held(8, bend), 0, 100);
        CHECK(found[50]);
        CHECK(std::ranges::count(found, true) < 20);
    }
}

TEST_CASE("a dip without a bend, a bend without a dip and a steady tone are no breaks") {
    CHECK_FALSE(breaks(held(8, 0)));
    CHECK_FALSE(breaks(held(0, 120)));
    CHECK_FALSE(breaks(held(0, 0)));
}
