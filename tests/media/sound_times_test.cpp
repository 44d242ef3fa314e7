// Media times stay true: a sweep at a known time, encoded by the ffmpeg program, is heard at that time.
#include "media/media.h"
#include "media/tools.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::media;
using namespace luft::media::test;
using namespace luft::test;

namespace {

constexpr double kAt = 0.5;
constexpr double kLength = 1.2;
constexpr double kLossless = 0.0015;
constexpr double kLossy = 0.005;

struct Coded {
    const char* file;
    const char* arguments;
    double tolerance;
    double delay = 0; ///< seconds by which the sound is late in the file itself, which says nothing about it
};

// Encoder delays that a file format has no place for: AAC's first block of 1024 samples (ISO/IEC 14496-3),
// MPEG layer II's filter bank of 481 samples (ISO/IEC 11172-3), AC-3's overlap of 256 samples (ATSC A/52),
// and 1105 samples of LAME's encoder and decoder (LAME technical FAQ), all at 48 kHz.
constexpr double kAac = 1024.0 / 48000;
constexpr double kLayer2 = 481.0 / 48000;
constexpr double kAc3 = 256.0 / 48000;
constexpr double kLame = 1105.0 / 48000;

} // namespace

TEST_CASE("a sound stands at its true time in every common format") {
    const Folder folder;
    write_wav(folder / "in.wav", sound_with_sweep(kAt, kLength, 48000, 2), 48000, 2);
    const std::vector<Coded> codings{
        {"a.wav", "-c:a pcm_s16le", kLossless},
        {"a24.wav", "-c:a pcm_s24le", kLossless},
        {"a.flac", "", kLossless},
        {"a.aiff", "", kLossless},
        {"a.caf", "-c:a pcm_s16le", kLossless},
        {"a.w64", "", kLossless},
        {"alac.m4a", "-c:a alac", kLossless},
        {"flac.mkv", "-c:a flac", kLossless},
        {"pcm.mov", "-c:a pcm_s16le", kLossless},
        {"flac.ogg", "-c:a flac", kLossless},
        {"a.wv", "", kLossless},
        {"a.mp3", "-c:a libmp3lame", kLossy},
        {"mp3.mp4", "-c:a libmp3lame", kLossy},
        {"a.m4a", "-c:a aac", kLossy},
        {"a.mp4", "-c:a aac", kLossy},
        {"a.opus", "-c:a libopus", kLossy},
        {"a.webm", "-c:a libopus", kLossy},
        {"opus.mp4", "-c:a libopus", kLossy},
        {"a.ogg", "-c:a libvorbis", kLossy},
        {"vorbis.webm", "-c:a libvorbis", kLossy},
        // ffmpeg's Matroska writer shifts the file by the delay; its pictures are shifted likewise.
        {"aac.mkv", "-c:a aac", kLossy, kAac},
        {"a.aac", "-c:a aac", kLossy, kAac},
        {"aac.ts", "-c:a aac", kLossy, kAac},
        {"mp2.ts", "-c:a mp2", kLossy, kLayer2},
        {"a.mpg", "-c:a mp2 -f vob", kLossy, kLayer2},
        {"a.ac3", "", kLossy, kAc3},
        {"noheader.mp3", "-c:a libmp3lame -write_xing 0", kLossy, kLame},
    };
    std::string all = "-i " + quoted(folder / "in.wav");
    for (const Coded& coded : codings)
        all += std::string(" ") + coded.arguments + " " + quoted(folder / coded.file);
    ffmpeg(all);
    for (const Coded& coded : codings) {
        INFO(coded.file);
        const Heard heard = hear(folder / coded.file);
        CHECK(heard.format.rate.per_second == 48000);
        CHECK(heard.format.channels.size() == 2);
        CHECK(where_is_sweep(heard, kAt + coded.delay) == Approx(kAt + coded.delay).margin(coded.tolerance));
        CHECK(heard.length() == Approx(kLength + coded.delay).margin(0.06));
        if (coded.tolerance == kLossless) CHECK(heard.count() == 57600);
    }
}

TEST_CASE("a stream that starts late begins with silence, and its sound stands where the pictures put it") {
    const Folder folder;
    write_wav(folder / "in.wav", sound_with_sweep(kAt, kLength, 44100, 1), 44100, 1);
    // ffmpeg stamps the encoder's delay before the true start, so that it lies inside the silence.
    const auto [file, codec] = GENERATE(table<std::string, std::string>({{"late.mkv", "flac"},
                                                                         {"late.mp4", "aac"},
                                                                         {"late.mov", "pcm_s16le"},
                                                                         {"late.ts", "ac3"},
                                                                         {"aac.ts", "aac"}}));
    INFO(file);
    ffmpeg("-f lavfi -i testsrc=size=64x48:rate=25:duration=2 -itsoffset 0.75 -i " +
           quoted(folder / "in.wav") + " -map 0:v -map 1:a -c:v libx264 -bf 0 -c:a " + codec + " " +
           quoted(folder / file));
    const Heard heard = hear(folder / file);
    CHECK(heard.peak(0, 0.72) == 0);
    CHECK(where_is_sweep(heard, kAt + 0.75) == Approx(kAt + 0.75).margin(0.002));
    CHECK(heard.length() == Approx(0.75 + kLength).margin(0.06));
}

TEST_CASE("a gap in a stream becomes silence of the same length") {
    const Folder folder;
    write_wav(folder / "in.wav", sound_with_sweep(1.0, 1.5, 48000, 2), 48000, 2);
    const std::string file = GENERATE(as<std::string>{}, "gap.mkv", "gap.mp4");
    ffmpeg("-i " + quoted(folder / "in.wav") +
           " -af \"asetnsamples=480,aselect='not(between(t,0.395,0.795))'\" -vsync 0 -c:a flac -frame_size "
           "480 -strict experimental " +
           quoted(folder / file));
    // What the file holds by the packets that an independent reader sees: a hole of 0.4 s.
    const auto stamps = ffprobe(folder / file, "a", "packet=pts_time");
    double widest = 0;
    for (std::size_t i = 1; i < stamps.size(); ++i)
        widest = std::max(widest, std::stod(stamps[i]) - std::stod(stamps[i - 1]));
    INFO(file);
    REQUIRE(widest == Approx(0.41).margin(0.02));
    const Heard heard = hear(folder / file);
    CHECK(where_is_sweep(heard, 1.0) == Approx(1.0).margin(kLossless));
    CHECK(heard.length() == Approx(1.5).margin(0.002));
}

TEST_CASE("an edit list that starts inside the sound is honoured") {
    const Folder folder;
    write_wav(folder / "in.wav", sound_with_sweep(0.9, 1.5, 48000, 1), 48000, 1);
    ffmpeg("-i " + quoted(folder / "in.wav") + " -c:a aac " + quoted(folder / "whole.m4a"));
    ffmpeg("-ss 0.4 -i " + quoted(folder / "whole.m4a") + " -c copy " + quoted(folder / "cut.m4a"));
    CHECK(where_is_sweep(hear(folder / "cut.m4a"), 0.5) == Approx(0.5).margin(kLossy));
}

TEST_CASE("rewinding gives the same samples again") {
    const Folder folder;
    write_wav(folder / "in.wav", sound_with_sweep(kAt, kLength, 44100, 2), 44100, 2);
    const std::vector<std::string> files{"a.mp3", "a.m4a", "a.ogg", "a.opus", "a.flac"};
    std::string all = "-i " + quoted(folder / "in.wav");
    for (const std::string& file : files)
        all += " " + quoted(folder / file);
    ffmpeg(all);
    for (const std::string& file : files) {
        INFO(file);
        const auto source = open_sound(open_file(folder / file));
        const Heard once = hear(*source);
        CHECK_FALSE(source->read());
        source->rewind();
        static_cast<void>(source->read());
        source->rewind(); // also from the midst
        const Heard again = hear(*source);
        CHECK(once.samples == again.samples);
        REQUIRE(source->expected_duration());
        CHECK(source->expected_duration()->value() == Approx(once.length()).margin(0.05));
    }
}
