// A sound that goes to any sample gives what a straight run gives there.
#include "media/media.h"
#include "media/tools.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace luft;
using namespace luft::media;
using namespace luft::media::test;
using namespace luft::test;

namespace {

constexpr int kRate = 44100;
constexpr std::size_t kPiece = 4096; // samples of one channel that are compared at each place

/// What comes after a go_to, at most so much; the test fails when it doesn't begin there or has gaps.
std::vector<float> piece(PlayableSound& sound, std::int64_t from, std::size_t count) {
    const std::size_t channels = sound.format().channels.size();
    sound.go_to(from);
    from = std::max<std::int64_t>(from, 0);
    std::vector<float> samples;
    while (samples.size() < count * channels) {
        const auto block = sound.read();
        if (!block) break;
        REQUIRE(block->first == from + static_cast<std::int64_t>(samples.size() / channels));
        samples.insert(samples.end(), block->samples.begin(), block->samples.end());
    }
    samples.resize(std::min(samples.size(), count * channels));
    return samples;
}

struct Match {
    int lag = 0;         ///< samples by which the piece is late
    double distance = 0; ///< RMS of the difference at that lag over the RMS of the sound
};

/// The first channel of a piece against the straight run's at `from`.
Match match(const Heard& straight, std::int64_t from, const std::vector<float>& got) {
    const std::size_t channels = straight.format.channels.size();
    constexpr int kMost = 150;
    Match best{0, 1e9};
    for (int lag = -kMost; lag <= kMost; ++lag) {
        double off = 0, power = 0;
        for (std::size_t i = kMost; i + kMost < got.size() / channels; ++i) {
            const auto at = static_cast<std::size_t>(from + static_cast<std::int64_t>(i) - lag);
            const double x = straight.samples[at * channels];
            off += std::pow(got[i * channels] - x, 2);
            power += x * x;
        }
        if (const double d = std::sqrt(off / power); d < best.distance) best = {lag, d};
    }
    return best;
}

/// Pink noise and a tone, different at every moment: 20 s, stereo.
void make(const std::filesystem::path& file) {
    ffmpeg("-f lavfi -i anoisesrc=d=20:c=pink:r=44100:a=0.3:seed=7 -f lavfi -i "
           "aevalsrc='0.2*sin(2*PI*220*t)|0.2*sin(2*PI*331*t)':d=20:s=44100 -filter_complex "
           "'[0][1]amix=inputs=2' -ac 2 -c:a pcm_s16le " +
           quoted(file));
}

constexpr double kPlaces[] = {3.0, 0.3, 18.5, 7.77777, 1.1, 7.9, 12.000011, 0.0, 19.0, 2.5, 15.4321};

} // namespace

TEST_CASE("after going to a sample, a lossless sound is what a straight run gives there, to the bit") {
    const Folder folder;
    make(folder / "in.wav");
    const auto [file, arguments] = GENERATE(table<std::string, std::string>({
        {"a.wav", "-c:a pcm_s16le"},
        {"a24.wav", "-c:a pcm_s24le"},
        {"a.flac", ""},
        {"alac.m4a", "-c:a alac"},
        {"flac.mkv", "-c:a flac"},
        {"pcm.mov", "-c:a pcm_s16le"},
        {"a.aiff", ""},
    }));
    INFO(file);
    ffmpeg("-i " + quoted(folder / "in.wav") + " " + arguments + " " + quoted(folder / file));
    const Heard straight = hear(folder / file);
    const auto sound = open_playable_sound(open_file(folder / file));
    for (const double at : kPlaces) {
        CAPTURE(at);
        const auto from = static_cast<std::int64_t>(at * kRate);
        const auto got = piece(*sound, from, kPiece);
        const auto first = straight.samples.begin() + from * 2;
        CHECK(got == std::vector<float>(first, first + 2 * static_cast<std::ptrdiff_t>(kPiece)));
    }
}

TEST_CASE(
    "after going to a sample, a lossy sound stands where a straight run puts it and is nearly the same") {
    const Folder folder;
    make(folder / "in.wav");
    const std::string pictures =
        "-f lavfi -i testsrc=size=64x48:rate=25:duration=20 -c:v libx264 -preset ultrafast ";
    const auto [file, arguments] = GENERATE_COPY(table<std::string, std::string>({
        {"a.mp3", "-c:a libmp3lame -b:a 192k"},
        {"vbr.mp3", "-c:a libmp3lame -q:a 3"},
        {"noheader.mp3", "-c:a libmp3lame -write_xing 0"},
        {"a.m4a", "-c:a aac -b:a 192k"},
        {"a.ogg", "-c:a libvorbis"},
        {"a.opus", "-c:a libopus -b:a 160k"},
        {"opus.mka", "-c:a libopus -b:a 160k"},
        {"vorbis.webm", "-c:a libvorbis"},
        {"aac.mkv", pictures + "-c:a aac -b:a 192k"},
        {"video.mp4", pictures + "-c:a aac -b:a 192k"},
        {"late.mp4", "-itsoffset 0.75 " + pictures + "-c:a aac -b:a 192k"},
        {"aac.ts", pictures + "-c:a aac -b:a 192k"},
        {"a.aac", "-c:a aac -b:a 192k"},
        {"a.avi", pictures + "-c:a libmp3lame -b:a 192k"},
    }));
    INFO(file);
    ffmpeg("-i " + quoted(folder / "in.wav") + " " + arguments + " " + quoted(folder / file));
    const Heard straight = hear(folder / file);
    const auto sound = open_playable_sound(open_file(folder / file));
    for (const double at : kPlaces) {
        CAPTURE(at);
        const auto from = static_cast<std::int64_t>(at * straight.format.rate.per_second);
        const auto got = piece(*sound, from, kPiece);
        REQUIRE(got.size() == kPiece * straight.format.channels.size());
        if (from < 1000) continue; // nothing before it to be late by; the lossless check goes there
        const Match found = match(straight, from, got);
        CAPTURE(found.distance);
        CHECK(std::abs(found.lag) <= 3);
        // AAC draws its noise bands anew at each run (ISO/IEC 14496-3, 4.6.13): 0.06 was seen.
        CHECK(found.distance < 0.1);
    }
}

TEST_CASE("past the end there is nothing, and the sound can go back from there") {
    const Folder folder;
    make(folder / "in.wav");
    const std::string file = GENERATE(as<std::string>{}, "in.wav", "a.mp3", "a.m4a", "a.ogg", "a.flac");
    INFO(file);
    if (file != "in.wav") ffmpeg("-i " + quoted(folder / "in.wav") + " " + quoted(folder / file));
    const auto sound = open_playable_sound(open_file(folder / file));
    const Heard straight = hear(folder / file);
    const auto count = static_cast<std::int64_t>(straight.count());
    CHECK(piece(*sound, count + 10 * kRate, kPiece).empty());
    CHECK(piece(*sound, count, kPiece).empty());
    CHECK(piece(*sound, count - 100, kPiece).size() == 200);
    CHECK(piece(*sound, -5, kPiece).size() == 2 * kPiece);
    CHECK(match(straight, 5 * kRate, piece(*sound, 5 * kRate, kPiece)).lag == 0);
    sound->rewind();
    CHECK(hear(*sound).samples == straight.samples);
}

TEST_CASE("going far into a long sound doesn't decode all that is before it") {
    const Folder folder;
    ffmpeg("-f lavfi -i anoisesrc=d=100:c=pink:r=44100:a=0.3:seed=7 -ac 2 -b:a 128k " +
           quoted(folder / "a.m4a"));
    struct Counting final : ByteSource {
        std::unique_ptr<ByteSource> inner;
        std::int64_t& read;
        Counting(std::unique_ptr<ByteSource> file, std::int64_t& count)
            : inner(std::move(file)), read(count) {}
        [[nodiscard]] std::int64_t size() const override { return inner->size(); }
        [[nodiscard]] std::string name() const override { return inner->name(); }
        std::size_t read_at(std::int64_t offset, std::span<std::byte> into) override {
            const std::size_t n = inner->read_at(offset, into);
            read += static_cast<std::int64_t>(n);
            return n;
        }
    };
    std::int64_t read = 0;
    const auto sound = open_playable_sound(std::make_unique<Counting>(open_file(folder / "a.m4a"), read));
    static_cast<void>(piece(*sound, 20 * kRate, 100)); // the file's beginning is looked at once
    const std::int64_t before = read;
    static_cast<void>(piece(*sound, 90 * kRate, 100));
    CHECK(read - before < 200'000); // of 1.6 MB
}

TEST_CASE("in a damaged file it still goes to the very sample, or gives nothing") {
    const Folder folder;
    make(folder / "in.wav");
    const std::string file =
        GENERATE(as<std::string>{}, "a.mp3", "a.m4a", "a.ogg", "a.flac", "a.mka", "a.ts");
    ffmpeg("-i " + quoted(folder / "in.wav") + " -t 8 -movflags +faststart " + quoted(folder / file));
    const std::string whole = read_all(folder / file);
    std::uint32_t random = 1;
    const auto draw = [&] { return (random = random * 1664525U + 1013904223U) >> 8; };
    int opened = 0;
    for (int round = 0; round < 12; ++round) {
        CAPTURE(file, round);
        std::string bytes = whole;
        for (int i = 0; i < 200; ++i) // the header stays whole
            bytes[bytes.size() / 10 + draw() % (bytes.size() * 8 / 10)] = static_cast<char>(draw());
        if (round % 3 == 0) bytes.resize(bytes.size() / 2 + draw() % (bytes.size() / 2));
        try {
            const auto sound = open_playable_sound(in_memory(file, bytes));
            for (const double at : {4.0, 1.5, 7.0, 0.0, 6.9}) {
                const auto got =
                    piece(*sound, static_cast<std::int64_t>(at * kRate), 20000); // checks the place
                CHECK(std::ranges::all_of(got, [](float x) { return std::isfinite(x); }));
            }
            ++opened;
        } catch (const Error& error) {
            CHECK(error.fault() != Fault::internal);
        }
    }
    CHECK(opened > 0);
}
