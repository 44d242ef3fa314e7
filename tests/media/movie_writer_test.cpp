// Movies out, read back by the ffmpeg and ffprobe programs and by our own reader.
#include "media/movie_writer.h"
#include "media/tools.h"
#include "tools/files.h"
#include "tools/folder.h"

#include <catch2/catch.hpp>
#include <sys/resource.h>

#include <algorithm>
#include <cerrno>
#include <cmath>
#include <csignal>
#include <cstring>

using namespace luft;
using namespace luft::media;
using namespace luft::media::test;
using namespace luft::test;

namespace {

constexpr int kFrames = 50;

/// A grey picture; frame n of the test movie has the grey 20 + 4 n.
Picture grey(int width, int height, int level) {
    return {width, height, Seconds(0),
            std::vector<std::uint8_t>(std::size_t{3} * static_cast<std::size_t>(width * height),
                                      static_cast<std::uint8_t>(level))};
}

MovieFormat with_pictures() {
    MovieFormat format;
    format.width = 64;
    format.height = 48;
    return format;
}

/// Two seconds: the sweep at 0.8 s, and numbered pictures when the format has any.
void write(const std::filesystem::path& file, const MovieFormat& format) {
    const int rate = format.sample_rate.per_second;
    const std::vector<float> sound = sound_with_sweep(0.8, 2.0, rate, format.channels);
    const auto movie = write_movie(file, format);
    std::size_t given = 0;
    for (int n = 0; n < kFrames; ++n) {
        if (format.width != 0) movie->picture(grey(format.width, format.height, 20 + 4 * n));
        const std::size_t until = sound.size() * static_cast<std::size_t>(n + 1) / kFrames;
        movie->sound(std::span(sound).subspan(given, until - given));
        given = until;
    }
    movie->finish();
}

} // namespace

TEST_CASE("a movie holds its pictures and its sound, each at its time") {
    const Folder folder;
    const std::string name = GENERATE(as<std::string>{}, "a.mp4", "a.mkv", "a.mov");
    INFO(name);
    write(folder / name, with_pictures());

    CHECK(ffprobe(folder / name, "v", "stream=codec_name,width,height,pix_fmt,avg_frame_rate") ==
          std::vector<std::string>{"h264", "64", "48", "yuv420p", "25/1"});
    CHECK(ffprobe(folder / name, "a", "stream=codec_name,sample_rate,channels") ==
          std::vector<std::string>{"aac", "48000", "2"});
    CHECK(std::stod(ffprobe(folder / name, "", "format=duration").at(0)) == Approx(2).margin(0.03));
    auto stamps = ffprobe(folder / name, "v", "packet=pts_time");
    CHECK(stamps.size() == kFrames);
    CHECK(std::stod(stamps.at(0)) == 0);
    CHECK(std::stod(stamps.at(49)) == Approx(1.96).margin(0.0006));

    CHECK(where_is_sweep(hear(folder / name), 0.8) == Approx(0.8).margin(0.002));
    const auto pictures = open_pictures(open_file(folder / name));
    for (const int n : {0, 30, 12, 49, 1}) {
        const Picture p = pictures->at(Seconds(n / 25.0 + 0.01));
        CHECK(int{p.rgb[4000]} == Approx(20 + 4 * n).margin(2));
    }
    CHECK(folder.names() == std::vector<std::string>{name});
}

TEST_CASE("a sound file holds its samples at its rate and with its channels") {
    const Folder folder;
    struct Sound {
        const char* file;
        const char* codec;
        int rate;
        int channels;
        double tolerance; ///< seconds
    };
    for (const Sound& s : {Sound{"a.wav", "pcm_s24le", 44100, 1, 0.0001},
                           {"b.wav", "pcm_s24le", 192000, 2, 0.0001},
                           {"c.wav", "pcm_s24le", 48000, 6, 0.0001},
                           {"a.flac", "flac", 48000, 2, 0.0001},
                           {"b.flac", "flac", 8000, 1, 0.0002},
                           {"a.m4a", "aac", 44100, 2, 0.002},
                           {"b.m4a", "aac", 32000, 1, 0.002},
                           {"A.M4A", "aac", 48000, 6, 0.002}}) {
        INFO(s.file);
        MovieFormat format;
        format.sample_rate = SampleRate{s.rate};
        format.channels = s.channels;
        write(folder / s.file, format);
        CHECK(ffprobe(folder / s.file, "a", "stream=codec_name,sample_rate,channels") ==
              std::vector<std::string>{s.codec, std::to_string(s.rate), std::to_string(s.channels)});
        const Heard heard = hear(folder / s.file);
        CHECK(where_is_sweep(heard, 0.8) == Approx(0.8).margin(s.tolerance));
        CHECK(heard.length() == Approx(2.0).margin(0.025));
    }
}

TEST_CASE("lossless files keep 24 bits, and clip what is beyond full scale") {
    const Folder folder;
    const std::string name = GENERATE(as<std::string>{}, "a.wav", "a.flac");
    std::vector<float> sound;
    for (int i = 0; i < 9000; ++i)
        sound.push_back(static_cast<float>(i - 4500) / 4000 + 1.0F / (1 << 22));
    MovieFormat format;
    format.channels = 1;
    const auto movie = write_movie(folder / name, format);
    movie->sound(sound);
    movie->finish();
    const Heard heard = hear(folder / name);
    REQUIRE(heard.samples.size() == sound.size());
    for (std::size_t i = 0; i < sound.size(); ++i)
        REQUIRE(heard.samples[i] == Approx(std::clamp(sound[i], -1.0F, 1.0F)).margin(1.5e-7));
}

TEST_CASE("the same input gives the same bytes") {
    const Folder folder;
    for (const char* ending : {".mp4", ".mkv", ".mov", ".m4a", ".wav", ".flac"}) {
        const bool pictures =
            std::string(ending) == ".mp4" || std::string(ending) == ".mkv" || std::string(ending) == ".mov";
        const MovieFormat format = pictures ? with_pictures() : MovieFormat{};
        write(folder / (std::string("one") + ending), format);
        write(folder / (std::string("two") + ending), format);
        INFO(ending);
        CHECK(read_all(folder / (std::string("one") + ending)) ==
              read_all(folder / (std::string("two") + ending)));
    }
}

TEST_CASE("a frame rate of 30000/1001 stays exact") {
    const Folder folder;
    MovieFormat format = with_pictures();
    format.frame_rate = Rational(30000, 1001);
    write(folder / "a.mp4", format);
    CHECK(ffprobe(folder / "a.mp4", "v", "stream=avg_frame_rate").at(0) == "30000/1001");
}

TEST_CASE("a movie that isn't finished leaves nothing behind, and what was there stays") {
    const Folder folder;
    write_all(folder / "a.mp4", "what was there");
    {
        const auto movie = write_movie(folder / "a.mp4", with_pictures());
        for (int i = 0; i < 40; ++i)
            movie->picture(grey(64, 48, i));
        movie->sound(std::vector<float>(100000));
    }
    CHECK(read_all(folder / "a.mp4") == "what was there");
    CHECK(folder.names() == std::vector<std::string>{"a.mp4"});
    write(folder / "a.mp4", with_pictures());
    CHECK(read_all(folder / "a.mp4").size() > 1000);
    CHECK(folder.names() == std::vector<std::string>{"a.mp4"});
}

TEST_CASE("what can't be written is refused with its fault, and leaves nothing behind") {
    const Folder folder;
    const auto fault = [](const auto& work) {
        try {
            work();
        } catch (const Error& e) {
            return e.fault();
        }
        FAIL("nothing was thrown");
        throw;
    };
    MovieFormat odd = with_pictures();
    odd.width = 63;
    MovieFormat fast;
    fast.sample_rate = SampleRate{192000};
    CHECK(fault([&] { write_movie(folder / "a.xyz", MovieFormat{}); }) == Fault::unsupported);
    CHECK(fault([&] { write_movie(folder / "a", MovieFormat{}); }) == Fault::unsupported);
    CHECK(fault([&] { write_movie(folder / "a.wav", with_pictures()); }) == Fault::bad_request);
    CHECK(fault([&] { write_movie(folder / "a.mp4", odd); }) == Fault::bad_request);
    CHECK(fault([&] { write_movie(folder / "a.m4a", fast); }) == Fault::unsupported); // AAC goes up to 96 kHz
    CHECK(fault([&] { write_movie(folder / "none" / "a.mp4", MovieFormat{}); }) == Fault::cannot_write);
    CHECK(fault([&] { write_movie(folder / "a.mp4", MovieFormat{})->picture(grey(64, 48, 0)); }) ==
          Fault::bad_request);
    CHECK(fault([&] { write_movie(folder / "a.mp4", with_pictures())->picture(grey(32, 48, 0)); }) ==
          Fault::bad_request);
    CHECK(fault([&] { write_movie(folder / "a.mp4", with_pictures())->finish(); }) == Fault::bad_request);
    CHECK(fault([&] {
              const auto movie = write_movie(folder / "a.wav", MovieFormat{});
              movie->sound(std::vector<float>(100));
              movie->finish();
              movie->sound(std::vector<float>(100));
          }) == Fault::bad_request);
    CHECK(folder.names() == std::vector<std::string>{"a.wav"}); // the last one, which was finished
}

TEST_CASE("a file that may not grow is reported with the system's reason, and leaves nothing behind") {
    const Folder folder;
    // POSIX: beyond RLIMIT_FSIZE a write fails with EFBIG when SIGXFSZ is ignored; as on a full disk.
    struct rlimit before {};
    REQUIRE(::getrlimit(RLIMIT_FSIZE, &before) == 0);
    const auto old = std::signal(SIGXFSZ, SIG_IGN);
    const struct rlimit small { 100'000, before.rlim_max };
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &small) == 0);
    std::string what;
    Fault fault = Fault::internal;
    try {
        const auto movie = write_movie(folder / "a.wav", MovieFormat{});
        movie->sound(std::vector<float>(200'000));
        movie->finish();
    } catch (const Error& e) {
        what = e.what();
        fault = e.fault();
    }
    ::setrlimit(RLIMIT_FSIZE, &before);
    std::signal(SIGXFSZ, old);
    CHECK(fault == Fault::cannot_write);
    CHECK(what.find(std::strerror(EFBIG)) != std::string::npos);
    CHECK(folder.names().empty());
}
