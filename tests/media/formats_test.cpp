// Every sample type, rate and layout comes out as interleaved floats at full scale = 1.
#include "media/media.h"
#include "media/tools.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>

using namespace luft;
using namespace luft::media;
using namespace luft::media::test;
using namespace luft::test;

namespace {

std::string constant(double value, const std::string& more = "") {
    return "-f lavfi -i aevalsrc=" + std::to_string(value) + ":s=48000:d=0.1" + more;
}

} // namespace

TEST_CASE("16-bit samples come out as their number over 32768, each in its place") {
    const Folder folder;
    std::vector<float> ramp;
    for (int i = 0; i < 2000; ++i)
        ramp.push_back(static_cast<float>(i * 31 % 30000) / 32767 * (i % 2 == 0 ? 1.0F : -1.0F));
    write_wav(folder / "a.wav", ramp, 44100, 2);
    const Heard heard = hear(folder / "a.wav");
    REQUIRE(heard.samples.size() == ramp.size());
    for (std::size_t i = 0; i < ramp.size(); ++i)
        REQUIRE(heard.samples[i] == Approx(std::round(double{ramp[i]} * 32767) / 32768).margin(1e-7));
}

TEST_CASE("every sample type has the same full scale") {
    const Folder folder;
    const std::vector<std::string> types{"pcm_u8",    "pcm_s16le", "pcm_s24le",
                                         "pcm_s32le", "pcm_f32le", "pcm_f64le"};
    std::string all = constant(0.5);
    for (const std::string& type : types)
        all += " -c:a " + type + " " + quoted(folder / (type + ".wav"));
    ffmpeg(all);
    for (const std::string& type : types) {
        const Heard heard = hear(folder / (type + ".wav"));
        INFO(type);
        REQUIRE(heard.count() == 4800);
        for (const float x : heard.samples)
            REQUIRE(x == Approx(0.5).margin(0.001));
    }
}

TEST_CASE("floats beyond full scale are kept; infinity and what is no number become silence") {
    const Folder folder;
    ffmpeg(constant(1.75) + " -c:a pcm_f32le " + quoted(folder / "a.wav"));
    std::string bytes = read_all(folder / "a.wav");
    const std::size_t data = bytes.find("data") + 8;
    bytes.replace(data, 4, std::string("\x00\x00\xc0\x7f", 4));     // NaN (IEEE 754)
    bytes.replace(data + 8, 4, std::string("\x00\x00\x80\x7f", 4)); // infinity
    const auto source = open_sound(in_memory("a.wav", bytes));
    const Heard heard = hear(*source);
    REQUIRE(heard.count() == 4800);
    CHECK(heard.samples[0] == 0);
    CHECK(heard.samples[1] == Approx(1.75));
    CHECK(heard.samples[2] == 0);
}

TEST_CASE("sound from 8 to 192 kHz keeps its rate and its time") {
    const Folder folder;
    const int rate = GENERATE(8000, 11025, 22050, 32000, 44100, 96000, 192000);
    write_wav(folder / "in.wav", sound_with_sweep(0.3, 0.8, rate, 1), rate, 1);
    ffmpeg("-i " + quoted(folder / "in.wav") + " " + quoted(folder / "a.flac") + " -ar " +
           std::to_string(rate) + " -c:a pcm_s24le " + quoted(folder / "a.mkv"));
    for (const char* file : {"in.wav", "a.flac", "a.mkv"}) {
        const Heard heard = hear(folder / file);
        INFO(file << " at " << rate);
        CHECK(heard.format.rate.per_second == rate);
        CHECK(heard.count() == static_cast<std::size_t>(std::lround(0.8 * rate)));
        CHECK(where_is_sweep(heard, 0.3) == Approx(0.3).margin(0.0002));
    }
}

TEST_CASE("channels come out in the file's order, each with its role") {
    const Folder folder;
    using enum ChannelRole;
    struct Laid {
        std::string layout;
        std::vector<ChannelRole> roles;
    };
    const auto laid = GENERATE(values<Laid>({
        {"mono", {centre}},
        {"stereo", {left, right}},
        {"3.0", {left, right, centre}},
        {"quad", {left, right, surround_left, surround_right}},
        {"5.0", {left, right, centre, surround_left, surround_right}},
        {"5.1", {left, right, centre, low_frequency, surround_left, surround_right}},
        {"5.1(side)", {left, right, centre, low_frequency, surround_left, surround_right}},
        {"7.1", {left, right, centre, low_frequency, other, other, surround_left, surround_right}},
    }));
    std::string levels;
    for (std::size_t i = 0; i < laid.roles.size(); ++i)
        levels += (i == 0 ? "" : "|") + std::to_string(0.1 * static_cast<double>(i + 1));
    ffmpeg("-f lavfi -i \"aevalsrc='" + levels + "':s=48000:d=0.1:c=" + laid.layout + "\" " +
           quoted(folder / "a.wav") + " " + quoted(folder / "a.flac"));
    for (const char* file : {"a.wav", "a.flac"}) {
        INFO(file << " " << laid.layout);
        const Heard heard = hear(folder / file);
        REQUIRE(heard.format.channels == laid.roles);
        REQUIRE(heard.count() == 4800);
        for (std::size_t i = 0; i < laid.roles.size(); ++i)
            CHECK(heard.samples[100 * laid.roles.size() + i] ==
                  Approx(0.1 * static_cast<double>(i + 1)).margin(1e-4));
    }
}

TEST_CASE("5.1 survives AAC, AC-3 and Opus with every channel in its place") {
    const Folder folder;
    std::string tones;
    for (int i = 0; i < 6; ++i) // the low-frequency channel is the fourth: 60 Hz, which it can carry
        tones += std::string(i == 0 ? "" : "|") + "0.3*sin(2*PI*t*" +
                 std::to_string(i == 3 ? 60 : 400 + 200 * i) + ")";
    ffmpeg("-f lavfi -i \"aevalsrc='" + tones + "':s=48000:d=1:c=5.1\" -b:a 640k " +
           quoted(folder / "a.m4a") + " -b:a 640k " + quoted(folder / "a.ac3") + " -b:a 512k " +
           quoted(folder / "a.opus"));
    for (const char* file : {"a.m4a", "a.ac3", "a.opus"}) {
        const Heard heard = hear(folder / file);
        INFO(file);
        REQUIRE(heard.format.channels.size() == 6);
        for (std::size_t c = 0; c < 6; ++c) {
            const std::map<ChannelRole, double> hz{
                {ChannelRole::left, 400},           {ChannelRole::right, 600},
                {ChannelRole::centre, 800},         {ChannelRole::low_frequency, 60},
                {ChannelRole::surround_left, 1200}, {ChannelRole::surround_right, 1400}};
            // Zero crossings upward in 0.6 s count the periods.
            int crossings = 0;
            for (std::size_t i = 9600; i < 38400; ++i)
                if (heard.samples[i * 6 + c] < 0 && heard.samples[(i + 1) * 6 + c] >= 0) ++crossings;
            CHECK(crossings / 0.6 == Approx(hz.at(heard.format.channels[c])).margin(5));
        }
    }
}

TEST_CASE("sound that changes its rate or its channels midway goes on in the first form, in time") {
    const Folder folder;
    write_wav(folder / "in.wav", sound_with_sweep(0.3, 1.0, 48000, 2), 48000, 2);
    const auto in = quoted(folder / "in.wav");
    ffmpeg("-i " + in + " " + quoted(folder / "one.ac3") + " -ar 32000 " + quoted(folder / "32k.ac3") +
           " -ac 1 " + quoted(folder / "mono.ac3") + " -ar 44100 -ac 1 " + quoted(folder / "both.ac3"));
    // AC-3 frames stand for themselves (ATSC A/52): two streams, one after the other, are a stream.
    const std::string one = read_all(folder / "one.ac3");
    for (const char* second : {"32k.ac3", "mono.ac3", "both.ac3"}) {
        const auto source = open_sound(in_memory("a.ac3", one + read_all(folder / second) + one));
        const Heard heard = hear(*source);
        INFO(second);
        CHECK(heard.format.rate.per_second == 48000);
        CHECK(heard.format.channels.size() == 2);
        CHECK(heard.length() == Approx(3.0).margin(0.15));
        const double whole = 32 * 1536 / 48000.0; // the first stream's frames of 1536 samples
        CHECK(where_is_sweep(heard, 0.305) == Approx(0.305).margin(0.002));
        // A raw stream has no stamps; FFmpeg counts the frame at the change at the new rate: half a frame
        // late.
        CHECK(where_is_sweep(heard, whole + 0.305) == Approx(whole + 0.305).margin(0.02));
    }
}
