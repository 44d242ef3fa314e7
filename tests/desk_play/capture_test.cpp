// Recording: SDL with its driver that reads from a file, no device at all, and one made up.
#include "desk/play/capture.h"
#include "desk_play/material.h"
#include "tools/environment.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <thread>

using namespace luft;
using namespace luft::desk;
using namespace luft::literals;
using luft::test::Folder;
using luft::test::Set;

namespace {

/// Two seconds in which every sample is another one: a sample lost, doubled or out of order shows.
std::vector<float> ramp() {
    std::vector<float> samples(2 * 48000);
    for (std::size_t i = 0; i < samples.size(); ++i)
        samples[i] = static_cast<float>(i + 1) / 131072;
    return samples;
}

std::string bytes_of(const std::vector<float>& samples) {
    std::string bytes(samples.size() * sizeof(float), '\0');
    std::memcpy(bytes.data(), samples.data(), bytes.size());
    return bytes;
}

/// Fetches until there are so many samples; gives up after ten seconds.
std::vector<float> fetch_until(Capture& capture, std::size_t count) {
    std::vector<float> got;
    const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(10);
    while (got.size() < count && std::chrono::steady_clock::now() < end) {
        const auto piece = capture.fetch();
        got.insert(got.end(), piece.begin(), piece.end());
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    return got;
}

/// Gives what it is handed.
class Fed final : public Input {
  public:
    explicit Fed(std::vector<float>& feed) : feed_(feed) {}
    void start() override { feed_.clear(); }
    void stop() override {}
    void fetch(std::vector<float>& out) override {
        out.insert(out.end(), feed_.begin(), feed_.end());
        feed_.clear();
    }
    [[nodiscard]] std::string name() const override { return "made up"; }
    [[nodiscard]] std::string note() const override { return {}; }

  private:
    std::vector<float>& feed_;
};

} // namespace

TEST_CASE("through SDL what the device hears is fetched sample by sample") {
    const Folder folder;
    const auto spoken = ramp();
    luft::test::write_all(folder / "in.raw", bytes_of(spoken));
    const Set driver("SDL_AUDIODRIVER", "disk");
    const Set file("SDL_DISKAUDIOFILEIN", (folder / "in.raw").string());
    Capture capture;
    CHECK(capture.fetch().empty());
    capture.start();
    CHECK(capture.running());
    CHECK(capture.note().empty());
    CHECK_FALSE(capture.name().empty());
    const auto got = fetch_until(capture, 48000);
    REQUIRE(got.size() >= 48000);
    // A paused device reads and drops: the first sample heard may be any one.
    const auto first = static_cast<std::size_t>(std::lround(got[0] * 131072)) - 1;
    REQUIRE(first + 48000 <= spoken.size());
    CHECK(std::equal(got.begin(), got.begin() + 48000, spoken.begin() + static_cast<std::ptrdiff_t>(first)));
    capture.stop();
    CHECK_FALSE(capture.running());
    CHECK(capture.fetch().empty());
}

TEST_CASE("a busy program loses nothing that was recorded meanwhile") {
    const Folder folder;
    const auto spoken = ramp();
    luft::test::write_all(folder / "in.raw", bytes_of(spoken));
    const Set driver("SDL_AUDIODRIVER", "disk");
    const Set file("SDL_DISKAUDIOFILEIN", (folder / "in.raw").string());
    Capture capture;
    capture.start();
    std::this_thread::sleep_for(std::chrono::milliseconds(600));
    const auto got = capture.fetch();
    REQUIRE(got.size() > 48000 * 3 / 10);
    const auto first = std::lround(got[0] * 131072) - 1;
    for (std::size_t i = 0; i < got.size(); i += 997)
        REQUIRE(std::lround(got[i] * 131072) - 1 == first + static_cast<long>(i));
}

TEST_CASE("without a microphone it says so, and nothing comes") {
    const Set driver("SDL_AUDIODRIVER", "none-of-that-name");
    Capture capture;
    capture.start();
    INFO(capture.note());
    CHECK(capture.note().find("No microphone can be opened") == 0);
    CHECK(capture.note().find("Connect a microphone") != std::string::npos);
    CHECK(capture.fetch().empty());
    CHECK_FALSE(capture.level());
}

TEST_CASE("the level is the highest peak of the last moments, against full scale") {
    std::vector<float> feed;
    Capture capture([&] { return std::make_unique<Fed>(feed); });
    capture.start();
    CHECK_FALSE(capture.level());
    feed = {0, 0.1F, -0.5F, 0.25F};
    CHECK(capture.fetch().size() == 4);
    CHECK(capture.level()->value() == Approx(-6.0206).margin(0.001)); // 20 log10 0.5
    feed = {-1.5F};                                                   // beyond what a file can hold
    capture.fetch();
    CHECK(capture.level() == 0_dB);
    feed.assign(static_cast<std::size_t>(Capture::kHold.value() * 48000), 0.001F);
    capture.fetch();
    CHECK(capture.level()->value() == Approx(-60).margin(0.001));
}

TEST_CASE("what was recorded before it started isn't fetched") {
    std::vector<float> feed = {0.5F, 0.5F};
    Capture capture([&] { return std::make_unique<Fed>(feed); });
    capture.start();
    CHECK(capture.fetch().empty());
}
