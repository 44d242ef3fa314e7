// Two performances in step, played as one sound.
#include "desk_play/material.h"
#include "together/in_step.h"

#include <catch2/catch.hpp>

#include <numbers>

using namespace luft;
using namespace luft::desk;
using namespace luft::desk::test;
using namespace luft::literals;

namespace {

/// 220 Hz and, from 4 s on, 330 Hz.
double first(double t, int) {
    return 0.4 * std::sin(2 * std::numbers::pi * (t < 4 ? 220 : 330) * t);
}

/// The same half as fast and a fifth higher, after 2 s of 100 Hz.
double second(double t, int) {
    return 0.4 * std::sin(2 * std::numbers::pi * (t < 2 ? 100 : t < 10 ? 330 : 495) * t);
}

compare::Alignment alignment() {
    compare::Stretch stretch;
    stretch.knots = {{0_s, 2_s}, {4_s, 10_s}, {8_s, 18_s}};
    compare::Alignment out;
    out.stretches = {stretch};
    return out;
}

SoundMaker pair() {
    return [] {
        return std::make_unique<together::InStep>(
            together::Recording{media::open_playable_sound(source_of(wav(8, 1, first))()), {}},
            together::Recording{media::open_playable_sound(source_of(wav(18, 2, second))()), {}}, alignment(),
            false);
    };
}

std::vector<float> between(const std::vector<float>& frames, int which, double from, double to) {
    const auto one = channel(frames, which);
    return {one.begin() + std::lround(from * kRate), one.begin() + std::lround(to * kRate)};
}

} // namespace

TEST_CASE("a pair plays the first left and the second right, from the first one's time on") {
    Desk desk;
    desk.player.open_pair(pair());
    desk.player.play(3_s);
    REQUIRE(desk.wait_for_end(20));
    const auto all = desk.tape->all();
    REQUIRE(all.size() == std::size_t{2} * 5 * kRate);
    CHECK(frequency(between(all, 0, 0.1, 0.9)) == Approx(220).epsilon(0.002));
    CHECK(frequency(between(all, 1, 0.1, 0.9)) == Approx(330).epsilon(0.002));
    CHECK(frequency(between(all, 0, 1.1, 4.5)) == Approx(330).epsilon(0.002));
    CHECK(frequency(between(all, 1, 1.1, 4.5)) == Approx(495).epsilon(0.002));
    CHECK(desk.player.position().value() == Approx(8));
}

TEST_CASE("a pair changes its speed while it plays, and the position stays the first one's time") {
    Desk desk;
    desk.tape->hold(true);
    desk.player.open_pair(pair());
    desk.player.play(3_s);
    const auto sound = [&](double seconds) {
        for (int left = static_cast<int>(seconds * kRate); left > 0; left -= 2400) {
            REQUIRE(desk.tape->wait_for_queue(2400));
            desk.tape->sound(2400);
        }
    };
    sound(0.5);
    CHECK(desk.player.position().value() == Approx(3.5).margin(0.001));
    desk.player.set_speed(0.5);
    sound(1);
    // What was queued when the speed changed still sounds at the old one.
    const double queued = Feeder::kAhead.value() + 0.021;
    const double now = desk.player.position().value();
    CHECK(now >= 4.0 - 0.001);
    CHECK(now <= 4.0 + queued / 2 + 0.001);
    CHECK(alignment().to_b(desk.player.position())->value() == Approx(2 + 2 * now));
    sound(0.5);
    CHECK(desk.player.position().value() == Approx(now + 0.25).margin(0.001));
    const auto all = desk.tape->all();
    CHECK(frequency(between(all, 0, 1.7, 1.95)) == Approx(330).epsilon(0.01));
    CHECK(frequency(between(all, 1, 1.7, 1.95)) == Approx(495).epsilon(0.01));
}

TEST_CASE("a pair goes round a loop on both sides") {
    Desk desk;
    desk.player.open_pair(pair());
    desk.player.play(3.5_s, Span{3.5_s, 4.5_s});
    REQUIRE(desk.tape->wait_for(3 * kRate, 20));
    desk.player.stop();
    const auto all = desk.tape->all();
    for (const double round : {0.0, 1.0, 2.0}) {
        CAPTURE(round);
        CHECK(frequency(between(all, 0, round + 0.05, round + 0.45)) == Approx(220).epsilon(0.01));
        CHECK(frequency(between(all, 1, round + 0.05, round + 0.45)) == Approx(330).epsilon(0.01));
        CHECK(frequency(between(all, 1, round + 0.55, round + 0.95)) == Approx(495).epsilon(0.01));
    }
}
