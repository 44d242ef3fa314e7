// The outputs themselves: SDL with its driver that writes to a file, and none at all.
#include "desk/play/silent_output.h"
#include "desk_play/material.h"
#include "tools/environment.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <thread>

using namespace luft;
using namespace luft::desk;
using namespace luft::desk::test;
using namespace luft::literals;
using luft::test::Folder;
using luft::test::Set;

namespace {

void sleep(double seconds) {
    std::this_thread::sleep_for(std::chrono::duration<double>(seconds));
}

/// The samples of a file that SDL's disk driver wrote, from the first one that isn't 0.
std::vector<float> sounding(const std::filesystem::path& file) {
    const std::string bytes = luft::test::read_all(file);
    std::vector<float> all(bytes.size() / sizeof(float));
    std::memcpy(all.data(), bytes.data(), all.size() * sizeof(float));
    std::size_t first = 0;
    while (first + 1 < all.size() && all[first] == 0 && all[first + 1] == 0)
        first += 2;
    return {all.begin() + static_cast<std::ptrdiff_t>(first), all.end()};
}

} // namespace

TEST_CASE("through SDL the file's samples reach the device, and the position is theirs") {
    const Folder folder;
    const Set driver("SDL_AUDIODRIVER", "disk");
    const Set file("SDL_DISKAUDIOFILE", (folder / "out.raw").string());
    // From a quarter of the first period on no sample of the left channel is 0 where it begins.
    const auto value = [](double t, int channel) { return 0.4 + 0.5 * glide(t, channel); };
    const auto whole = samples(5, 2, value);
    Seconds at;
    {
        Player player;
        player.open(source_of(wav(5, 2, value)));
        CHECK(player.note().empty());
        CHECK_FALSE(player.device().empty());
        player.play(3_s);
        sleep(0.8);
        CHECK(player.state() == PlayState::playing);
        player.pause();
        sleep(0.05);
        at = player.position();
        sleep(0.05);
        CHECK(player.position() == at);
    }
    const auto heard = sounding(folder / "out.raw");
    std::size_t count = heard.size();
    while (count > 0 && heard[count - 1] == 0 && heard[count - 2] == 0)
        count -= 2;
    REQUIRE(count > 2 * kRate / 2);
    CHECK(std::equal(heard.begin(), heard.begin() + static_cast<std::ptrdiff_t>(count),
                     whole.begin() + 2 * 3 * kRate));
    CHECK(at.value() == Approx(3 + static_cast<double>(count) / 2 / kRate).margin(0.040));
}

TEST_CASE("through SDL the end is reported once all has left the queue") {
    const Folder folder;
    const Set driver("SDL_AUDIODRIVER", "disk");
    const Set file("SDL_DISKAUDIOFILE", (folder / "out.raw").string());
    const auto value = [](double t, int channel) { return 0.4 + 0.5 * glide(t, channel); };
    const auto whole = samples(5, 2, value);
    std::atomic<bool> ended = false;
    {
        Player player;
        player.on_ended([&] { ended = true; });
        player.open(source_of(wav(5, 2, value)));
        player.play(4.5_s);
        for (int i = 0; i < 100 && !ended; ++i)
            sleep(0.05);
        CHECK(ended);
        CHECK(player.position().value() == Approx(5));
    }
    const auto heard = sounding(folder / "out.raw");
    REQUIRE(heard.size() >= kRate);
    CHECK(std::equal(heard.begin(), heard.begin() + kRate, whole.end() - kRate));
}

TEST_CASE("without a sound device it plays silently, says so, and keeps time") {
    const Set driver("SDL_AUDIODRIVER", "none-of-that-name");
    Player player;
    player.open(source_of(wav(5, 2, glide)));
    INFO(player.note());
    CHECK(player.note().find("No sound device can be opened") == 0);
    CHECK(player.note().find("Playing is silent. Connect") != std::string::npos);
    player.set_speed(0.5);
    player.play(1_s);
    // The clock begins when the queue is full.
    while (player.position() == 1_s)
        sleep(0.001);
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < 6; ++i) {
        sleep(0.1);
        const double before = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
        const double at = player.position().value();
        const double after = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
        CHECK(at > 1 + before * 0.5 - 0.040);
        CHECK(at < 1 + after * 0.5 + 0.040);
    }
    player.pause();
    const Seconds here = player.position();
    sleep(0.05);
    CHECK(player.position() == here);
}

TEST_CASE("a silent output empties by the clock and stands still when stopped") {
    SilentOutput output(SampleRate{1000}, "There is none.");
    CHECK(output.silent());
    const std::vector<float> frames(2 * 500);
    output.queue(frames);
    sleep(0.05);
    CHECK(output.queued() == 500);
    output.start();
    sleep(0.1);
    output.stop();
    const auto left = output.queued();
    CHECK(left <= 400);
    CHECK(left > 100);
    sleep(0.05);
    CHECK(output.queued() == left);
    output.clear();
    CHECK(output.queued() == 0);
}
