// The player from outside, on an output that keeps what it gets.
#include "desk_play/material.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <cmath>
#include <thread>

using namespace luft;
using namespace luft::desk;
using namespace luft::desk::test;
using namespace luft::literals;

namespace {

constexpr auto kAhead = static_cast<std::int64_t>(Feeder::kAhead.value() * kRate);

} // namespace

TEST_CASE("what is played from a place is the file from there, and the end is reported") {
    Desk desk;
    desk.player.open(source_of(wav(5, 2, glide)));
    CHECK(desk.player.device() == "recorder");
    CHECK(desk.player.note().empty());
    CHECK(desk.player.state() == PlayState::stopped);
    desk.player.play(3_s);
    REQUIRE(desk.wait_for_end());
    const auto whole = samples(5, 2, glide);
    CHECK(desk.tape->all() == std::vector<float>(whole.begin() + 2 * 3 * kRate, whole.end()));
    CHECK(desk.player.state() == PlayState::stopped);
    CHECK(desk.player.position().value() == Approx(5));
    CHECK(desk.player.trouble().empty());
    desk.player.play(4_s); // and again
    REQUIRE(desk.wait_for_end());
    CHECK(desk.tape->all().size() == 2 * 3 * kRate);
    desk.player.play(7_s);
    CHECK(desk.wait_for_end());
}

TEST_CASE("half speed takes twice as long") {
    Desk desk;
    desk.player.open(source_of(wav(3, 1, steady)));
    desk.player.set_speed(0.5);
    desk.player.play(1_s);
    REQUIRE(desk.wait_for_end());
    const auto left = channel(desk.tape->all());
    CHECK(static_cast<double>(left.size()) / kRate == Approx(4).epsilon(0.01));
    CHECK(frequency(std::span(left).subspan(kRate, 2 * kRate)) == Approx(220).epsilon(0.005));
}

TEST_CASE("the position is what sounds, not what is queued, through speed, loop and device delay") {
    Desk desk;
    Recorder::Tape& tape = *desk.tape;
    tape.hold(true);
    desk.player.open(source_of(wav(20, 2, glide)));
    const double speed = GENERATE(1.0, 0.5, 0.25);
    CAPTURE(speed);
    desk.player.set_speed(speed);
    desk.player.play(2_s);
    CHECK(desk.player.position() == 2_s);
    REQUIRE(tape.wait_for_queue(kAhead));
    CHECK(desk.player.position() == 2_s);
    double out = 0;
    for (const int step : {100, 2000, 4800, 3000, 6000}) {
        REQUIRE(tape.wait_for_queue(step));
        tape.sound(step);
        out += static_cast<double>(step) / kRate;
        CHECK(desk.player.position().value() == Approx(2 + out * speed).margin(0.001));
    }
    {
        const std::scoped_lock hold(tape.lock);
        tape.delay = 1024;
    }
    CHECK(desk.player.position().value() == Approx(2 + (out - 1024.0 / kRate) * speed).margin(0.001));
    {
        const std::scoped_lock hold(tape.lock);
        tape.delay = 0;
    }
    desk.player.play(4_s, Span{4_s, 4.1_s});
    for (int i = 0; i < 25; ++i) {
        REQUIRE(tape.wait_for_queue(1003)); // never at the loop's end itself
        tape.sound(1003);
        const double line = (i + 1) * 1003.0 / kRate * speed;
        CHECK(desk.player.position().value() == Approx(4 + std::fmod(line, 0.1)).margin(0.001));
    }
}

TEST_CASE("no more than 150 ms lie ahead, and a change is heard after them") {
    Desk desk;
    Recorder::Tape& tape = *desk.tape;
    tape.hold(true);
    desk.player.open(source_of(wav(20, 2, steady)));
    desk.player.play(1_s);
    REQUIRE(tape.wait_for_queue(kAhead));
    std::this_thread::sleep_for(std::chrono::milliseconds(50));
    CHECK(tape.waiting() < kAhead + kRate / 30);
    desk.player.set_volume(0.25);
    const std::size_t before = tape.all().size() / 2;
    for (int i = 0; i < 20; ++i) {
        REQUIRE(tape.wait_for_queue(2000));
        tape.sound(2000);
    }
    const auto left = channel(tape.all());
    REQUIRE(left.size() > before + 10000);
    CHECK(rms(std::span(left).first(before)) == Approx(0.3536).epsilon(0.01));
    // One chunk may have been in the making; the next glides there.
    CHECK(rms(std::span(left).subspan(before + 2000, 8000)) == Approx(0.25 * 0.3536).epsilon(0.01));
}

TEST_CASE("pausing keeps the place, playing elsewhere leaves what was queued, stopping reports no end") {
    Desk desk;
    Recorder::Tape& tape = *desk.tape;
    tape.hold(true);
    desk.player.open(source_of(wav(20, 2, glide)));
    const auto whole = samples(20, 2, glide);
    desk.player.play(1_s);
    REQUIRE(tape.wait_for_queue(kAhead));
    tape.sound(2400);
    desk.player.pause();
    CHECK(desk.player.state() == PlayState::paused);
    CHECK(desk.player.position().value() == Approx(1.05));
    {
        const std::scoped_lock hold(tape.lock);
        CHECK_FALSE(tape.running);
    }
    desk.player.resume();
    CHECK(desk.player.state() == PlayState::playing);
    REQUIRE(tape.wait_for_queue(kAhead));
    const auto first = tape.all();
    CHECK(first == std::vector<float>(whole.begin() + 2 * kRate,
                                      whole.begin() + 2 * kRate + static_cast<std::ptrdiff_t>(first.size())));
    desk.player.pause();
    desk.player.play(10_s);
    REQUIRE(desk.tape->wait_for(first.size() / 2 + 5000));
    CHECK(desk.player.position() == 10_s);
    const auto both = tape.all();
    const auto second = both.begin() + static_cast<std::ptrdiff_t>(first.size());
    // Nothing of the first place comes after.
    CHECK(std::equal(second, both.end(), whole.begin() + 2 * 10 * kRate));
    REQUIRE(tape.wait_for_queue(kAhead));
    tape.sound(4800);
    desk.player.stop();
    CHECK(desk.player.position().value() == Approx(10.1));
    CHECK(desk.player.state() == PlayState::stopped);
    CHECK(tape.waiting() == 0);
    CHECK_FALSE(desk.wait_for_end(0.1));
}

TEST_CASE("what is in the making when another place is asked for is never heard") {
    Desk desk;
    Recorder::Tape& tape = *desk.tape;
    tape.hold(true);
    desk.player.open(source_of(wav(20, 2, glide)));
    const auto whole = samples(20, 2, glide);
    // The tone's pitch is asked while a chunk is made: there the player's thread is held up.
    std::atomic<bool> armed = true, inside = false, go_on = false;
    desk.player.set_tone(std::make_shared<const ToneAt>([&](Seconds) -> std::optional<Hertz> {
        if (armed.exchange(false)) {
            inside = true;
            inside.notify_all();
            go_on.wait(false);
        }
        return std::nullopt;
    }));
    desk.player.play(1_s);
    inside.wait(false);
    desk.player.play(10_s);
    go_on = true;
    go_on.notify_all();
    REQUIRE(tape.wait_for_queue(kAhead));
    const auto all = tape.all();
    CHECK(std::equal(all.begin(), all.end(), whole.begin() + 2 * 10 * kRate));
}

TEST_CASE("the settings stay through another opening, the loop goes") {
    Desk desk;
    desk.player.set_volume(0.5);
    desk.player.set_speed(7);
    CHECK(desk.player.settings().speed == 1);
    desk.player.open(source_of(wav(1, 2, glide)));
    desk.player.play(0_s, Span{0.2_s, 0.4_s});
    REQUIRE(desk.tape->wait_for(2 * kRate)); // round and round
    desk.player.open(source_of(wav(1, 2, glide)));
    CHECK_FALSE(desk.player.settings().loop);
    const std::size_t before = desk.tape->all().size();
    desk.player.play(0_s);
    REQUIRE(desk.wait_for_end());
    const auto all = desk.tape->all();
    REQUIRE(all.size() == before + 2 * kRate);
    const auto whole = samples(1, 2, glide);
    for (std::size_t i = 0; i < whole.size(); i += 97)
        REQUIRE(all[before + i] == Approx(whole[i] / 2).margin(1e-6));
    desk.player.play(0_s, Span{0.2_s, 0.4_s});
    desk.player.set_loop(std::nullopt); // plays on to the end
    CHECK(desk.wait_for_end());
}
