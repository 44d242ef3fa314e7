// The player when things go wrong, and under haste.
#include "base/error.h"
#include "desk_play/material.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <thread>

using namespace luft;
using namespace luft::desk;
using namespace luft::desk::test;
using namespace luft::literals;

namespace {

constexpr auto kAhead = static_cast<std::int64_t>(Feeder::kAhead.value() * kRate);

/// Reads the sound of a WAV until it is told to fail.
SourceMaker failing(std::shared_ptr<std::atomic<bool>> fails) {
    class Source final : public ByteSource {
      public:
        explicit Source(std::shared_ptr<std::atomic<bool>> fails)
            : inner_(source_of(wav(60, 2, glide))()), fails_(std::move(fails)) {}
        [[nodiscard]] std::int64_t size() const override { return inner_->size(); }
        [[nodiscard]] std::string name() const override { return inner_->name(); }
        std::size_t read_at(std::int64_t offset, std::span<std::byte> into) override {
            if (*fails_) throw Error(Fault::unreadable, "The disk is gone.", "Connect it again.");
            return inner_->read_at(offset, into);
        }

      private:
        std::unique_ptr<ByteSource> inner_;
        std::shared_ptr<std::atomic<bool>> fails_;
    };
    return [fails = std::move(fails)] { return std::make_unique<Source>(fails); };
}

} // namespace

TEST_CASE("what can't be opened says why and leaves nothing open") {
    Desk desk;
    desk.player.open(source_of(wav(1, 2, glide)));
    CHECK_THROWS_AS(desk.player.open(source_of("this is no recording at all")), Error);
    CHECK_FALSE(desk.player.is_open());
    desk.player.play(0_s); // does nothing
    CHECK(desk.player.state() == PlayState::stopped);
    CHECK(desk.player.position() == 0_s);
}

TEST_CASE("a sound that breaks off says so after its last sample, and can be played again") {
    const auto fails = std::make_shared<std::atomic<bool>>(false);
    Desk desk;
    Recorder::Tape& tape = *desk.tape;
    tape.hold(true);
    desk.player.open(failing(fails));
    desk.player.play(1_s);
    REQUIRE(tape.wait_for_queue(kAhead));
    *fails = true;
    tape.hold(false);
    REQUIRE(desk.wait_for_end());
    CHECK(desk.player.trouble() == "The disk is gone. Connect it again.");
    CHECK(desk.player.state() == PlayState::stopped);
    const auto whole = samples(60, 2, glide);
    const auto heard = tape.all();
    CHECK(heard.size() < whole.size() - 2 * kRate);
    CHECK(std::equal(heard.begin(), heard.end(), whole.begin() + 2 * kRate));
    desk.player.play(2_s); // still broken
    REQUIRE(desk.wait_for_end());
    CHECK_FALSE(desk.player.trouble().empty());
    *fails = false;
    tape.hold(true);
    desk.player.play(50_s);
    CHECK(desk.player.trouble().empty());
    REQUIRE(tape.wait_for_queue(kAhead));
    const auto again = tape.all();
    CHECK(std::equal(again.begin() + static_cast<std::ptrdiff_t>(heard.size()), again.end(),
                     whole.begin() + 2 * 50 * kRate));
}

TEST_CASE("commands in any order and haste leave the player whole") {
    Desk desk;
    desk.player.open(source_of(wav(10, 2, glide)));
    for (int i = 0; i < 300; ++i) {
        switch (i * 7 % 11) {
        case 0:
            desk.player.play(Seconds(i % 10), Span{1_s, 1.2_s});
            break;
        case 1:
            desk.player.pause();
            break;
        case 2:
            desk.player.set_speed(0.25 + i % 4 * 0.25);
            break;
        case 3:
            desk.player.resume();
            break;
        case 4:
            desk.player.set_loop(std::nullopt);
            break;
        case 5:
            desk.player.stop();
            break;
        case 6:
            desk.player.set_tone(std::make_shared<const ToneAt>([](Seconds) { return Hertz(300); }));
            break;
        case 7:
            desk.player.set_volume(i % 3 * 0.5);
            break;
        default:
            desk.player.play(Seconds(i % 10));
            break;
        }
        const Seconds at = desk.player.position();
        REQUIRE(at >= 0_s);
        REQUIRE(at <= 10_s);
        if (i % 5 == 0) std::this_thread::sleep_for(std::chrono::milliseconds(2));
    }
    desk.player.set_speed(1);
    desk.player.set_volume(1);
    desk.player.set_tone(nullptr);
    desk.player.stop();
    while (desk.wait_for_end(0.05)) {
    }
    const std::size_t before = desk.tape->all().size();
    desk.player.play(9_s);
    REQUIRE(desk.wait_for_end());
    const auto all = desk.tape->all();
    const auto whole = samples(10, 2, glide);
    REQUIRE(all.size() == before + 2 * kRate);
    CHECK(std::equal(all.begin() + static_cast<std::ptrdiff_t>(before), all.end(),
                     whole.begin() + 2 * 9 * kRate));
}
