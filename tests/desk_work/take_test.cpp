// Recorded talks, read back with FFmpeg's own programs.
#include "base/error.h"
#include "desk/work/takes.h"
#include "script/voices.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>
#include <sys/resource.h>

#include <cmath>
#include <csignal>
#include <cstring>

using namespace luft;
using namespace luft::desk;
using luft::test::Folder;
using luft::test::quoted;
using luft::test::run;

namespace {

std::vector<float> tone(std::size_t count, double amplitude = 0.5) {
    std::vector<float> samples(count);
    for (std::size_t i = 0; i < count; ++i)
        samples[i] = static_cast<float>(amplitude * std::sin(0.05 * static_cast<double>(i)));
    return samples;
}

/// A WAV file as ffmpeg decodes it.
std::vector<float> decoded(const std::filesystem::path& file) {
    const std::filesystem::path raw = file.string() + ".f32";
    run("ffmpeg -v error -y -i " + quoted(file) + " -f f32le " + quoted(raw));
    const std::string bytes = luft::test::read_all(raw);
    std::filesystem::remove(raw);
    std::vector<float> samples(bytes.size() / sizeof(float));
    std::memcpy(samples.data(), bytes.data(), samples.size() * sizeof(float));
    return samples;
}

/// Files can't grow beyond this many bytes while it lives: a full disk.
class FullAt {
  public:
    explicit FullAt(rlim_t bytes) {
        getrlimit(RLIMIT_FSIZE, &before_);
        before_handler_ = std::signal(SIGXFSZ, SIG_IGN);
        const rlimit now{bytes, before_.rlim_max};
        setrlimit(RLIMIT_FSIZE, &now);
    }
    FullAt(const FullAt&) = delete;
    FullAt& operator=(const FullAt&) = delete;
    ~FullAt() {
        setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, before_handler_);
    }

  private:
    rlimit before_{};
    void (*before_handler_)(int) = nullptr;
};

} // namespace

TEST_CASE("A kept take is a WAV file of one channel with exactly the samples that were spoken") {
    const Folder folder;
    const auto spoken = tone(48000 + 77);
    const auto file = folder / "song-voice" / "talk-3.wav";
    Take take(file);
    for (std::size_t i = 0; i < spoken.size(); i += 1000)
        take.add(std::span(spoken).subspan(i, std::min<std::size_t>(1000, spoken.size() - i)));
    CHECK(take.samples() == 48077);
    CHECK(take.length().value() == Approx(48077.0 / 48000));
    CHECK_FALSE(std::filesystem::exists(file));
    take.keep();
    CHECK(
        run("ffprobe -v error -show_entries stream=codec_name,sample_rate,channels,duration_ts -of csv=p=0 " +
            quoted(file)) == "pcm_s24le,48000,1,48077\n");
    const auto heard = decoded(file);
    REQUIRE(heard.size() == spoken.size());
    for (std::size_t i = 0; i < heard.size(); ++i)
        REQUIRE(std::abs(heard[i] - spoken[i]) < 1e-6F); // 24 bits: steps of 1.2e-7
    CHECK(folder.names() == std::vector<std::string>{"song-voice", "song-voice/talk-3.wav"});
}

TEST_CASE("A take that is dropped leaves the former one, and no folder that wasn't there") {
    const Folder folder;
    luft::test::write_all(folder / "talk-1.wav", "the former one");
    {
        Take take(folder / "talk-1.wav");
        take.add(tone(100000));
        Take elsewhere(folder / "new" / "talk-2.wav");
        elsewhere.add(tone(100));
        CHECK(std::filesystem::exists(folder / "new"));
    }
    CHECK(luft::test::read_all(folder / "talk-1.wav") == "the former one");
    CHECK(folder.names() == std::vector<std::string>{"talk-1.wav"});
}

TEST_CASE("A folder that can't be made is told in a sentence") {
    const Folder folder;
    luft::test::write_all(folder / "song-voice", "a file where the folder should be");
    try {
        Take take(folder / "song-voice" / "talk-1.wav");
        FAIL("should have failed");
    } catch (const Error& error) {
        CHECK(error.fault() == Fault::cannot_write);
        CHECK(std::string(error.what()).find("song-voice") != std::string::npos);
        CHECK_FALSE(error.advice().empty());
    }
}

TEST_CASE("When the disk is full that talk isn't recorded, the next one is, and the former file stays") {
    const Folder folder;
    const auto kept = script::voice_file(folder.path(), {1});
    luft::test::write_all(kept, "the former one");
    Takes takes(folder.path());
    takes.begin({1});
    {
        const FullAt full(200000);
        CHECK_THROWS_AS(
            [&] {
                for (int i = 0; i < 100; ++i)
                    takes.add(tone(4800));
            }(),
            Error);
    }
    CHECK_FALSE(takes.recording());
    CHECK_NOTHROW(takes.add(tone(4800)));
    CHECK_FALSE(takes.end());
    takes.begin({2});
    takes.add(tone(48000));
    CHECK(takes.end() == Seconds(1));
    takes.keep({{{1}, Seconds(8)}, {{2}, Seconds(1)}});
    CHECK(luft::test::read_all(kept) == "the former one");
    CHECK(folder.names() == std::vector<std::string>{"talk-1.wav", "talk-2.wav"});
}

TEST_CASE("Of a talk spoken twice the second take is kept; a slip of the key counts for nothing") {
    const Folder folder;
    Takes takes(folder.path());
    takes.begin({7});
    takes.add(tone(48000));
    CHECK(takes.end() == Seconds(1));
    takes.begin({7});
    takes.add(tone(96000, 0.25));
    CHECK(takes.end() == Seconds(2));
    takes.begin({7});
    takes.add(tone(2400)); // 0.05 s
    CHECK_FALSE(takes.end());
    takes.begin({8});
    takes.add(tone(96000)); // broken off
    takes.drop();
    const Takes::Lengths measured{{{7}, Seconds(2)}};
    CHECK(takes.count(measured) == 1);
    takes.keep(measured);
    CHECK(folder.names() == std::vector<std::string>{"talk-7.wav"});
    const auto heard = decoded(folder / "talk-7.wav");
    REQUIRE(heard.size() == 96000);
    CHECK(*std::ranges::max_element(heard) == Approx(0.25).margin(0.001));
}

TEST_CASE("A take of a talk that was spoken once more without recording isn't kept") {
    const Folder folder;
    luft::test::write_all(folder / "talk-7.wav", "the former one");
    Takes takes(folder.path());
    takes.begin({7});
    takes.add(tone(48000));
    CHECK(takes.end());
    CHECK(takes.count({{{7}, Seconds(1.5)}}) == 0);
    CHECK(takes.count({}) == 0);
    takes.keep({{{7}, Seconds(1.5)}});
    CHECK(folder.names() == std::vector<std::string>{"talk-7.wav"});
    CHECK(luft::test::read_all(folder / "talk-7.wav") == "the former one");
}

TEST_CASE("Takes that aren't kept leave nothing behind") {
    const Folder folder;
    {
        Takes takes(folder / "song-voice");
        takes.begin({7});
        takes.add(tone(48000));
        CHECK(takes.end());
        takes.begin({8});
        takes.add(tone(48000));
    }
    CHECK(folder.names().empty());
}
