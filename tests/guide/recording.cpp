#include "guide/recording.h"

#include "media/movie_writer.h"
#include "tools/files.h"
#include "tools/folder.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstring>
#include <map>
#include <numbers>
#include <sstream>
#include <tuple>

namespace luft::guide::testing {
namespace {

constexpr int kBlock = 16;
constexpr int kColumns = kWidth / kBlock, kBits = kColumns * (kHeight / kBlock);

std::size_t sample(double t) {
    return static_cast<std::size_t>(std::llround(t * kRate));
}

} // namespace

const std::vector<float>& sound() {
    static const std::vector<float> made = [] {
        std::vector<float> out;
        std::uint32_t state = 1;
        double one = 0, two = 0;
        for (std::size_t n = 0; n < sample(kLength); ++n) {
            state = state * 1664525 + 1013904223; // Knuth, The Art of Computer Programming 2, 3.3.4
            const double noise = static_cast<double>(state >> 8) / (1 << 23) - 1;
            constexpr double kPole = 0.68; // exp(-2 pi 3000 / 48000)
            one = kPole * one + (1 - kPole) * noise;
            two = kPole * two + (1 - kPole) * one;
            const double t = static_cast<double>(n) / kRate;
            const bool in_tone = t >= kToneFrom && t < kToneTo;
            out.push_back(static_cast<float>(in_tone ? 0.25 * std::sin(2 * std::numbers::pi * kToneHertz * t)
                                                     : 0.8 * two));
        }
        return out;
    }();
    return made;
}

media::Picture numbered(int number) {
    media::Picture picture{kWidth, kHeight, Seconds(0), {}};
    for (int y = 0; y < kHeight; ++y)
        for (int x = 0; x < kWidth; ++x) {
            const int bit = y / kBlock * kColumns + x / kBlock;
            const std::uint8_t level = (number >> bit & 1) != 0 ? 235 : 20;
            picture.rgb.insert(picture.rgb.end(), 3, level);
        }
    return picture;
}

int number_in(const std::uint8_t* grey) {
    int number = 0;
    for (int bit = 0; bit < kBits; ++bit) {
        const int x = bit % kColumns * kBlock + kBlock / 2, y = bit / kColumns * kBlock + kBlock / 2;
        if (grey[y * kWidth + x] > 128) number |= 1 << bit;
    }
    return number;
}

namespace {

void make(const std::filesystem::path& file, Rational frame_rate) {
    media::MovieFormat format;
    format.width = kWidth;
    format.height = kHeight;
    format.frame_rate = frame_rate;
    format.sample_rate = SampleRate{kRate};
    format.audio_kbps = 192;
    format.quick = true;
    const auto movie = media::write_movie(file, format);
    const auto frames = static_cast<int>((Rational(static_cast<std::int64_t>(kLength)) * frame_rate).floor());
    std::vector<float> stereo;
    for (const float s : sound())
        stereo.insert(stereo.end(), 2, s);
    std::size_t given = 0;
    for (int n = 0; n < frames; ++n) {
        movie->picture(numbered(n));
        const std::size_t until = stereo.size() / 2 * static_cast<std::size_t>(n + 1) / frames * 2;
        movie->sound(std::span(stereo).subspan(given, until - given));
        given = until;
    }
    movie->finish();
}

} // namespace

void record(const std::filesystem::path& file, Rational frame_rate) {
    // Most tests want the same one.
    static std::map<std::tuple<std::string, std::int64_t, std::int64_t>, std::string> made;
    std::string& bytes = made[{file.extension().string(), frame_rate.num(), frame_rate.den()}];
    if (bytes.empty()) {
        make(file, frame_rate);
        bytes = luft::test::read_all(file);
    } else {
        luft::test::write_all(file, bytes);
    }
}

std::vector<int> numbers_in(const std::filesystem::path& movie) {
    const luft::test::Folder folder;
    luft::test::run("ffmpeg -nostdin -v error -i " + luft::test::quoted(movie) +
                    " -map 0:v -vsync passthrough -f rawvideo -pix_fmt gray " +
                    luft::test::quoted(folder / "g"));
    const std::string grey = luft::test::read_all(folder / "g");
    REQUIRE(grey.size() % (kWidth * kHeight) == 0);
    std::vector<int> numbers;
    for (std::size_t at = 0; at < grey.size(); at += kWidth * kHeight)
        numbers.push_back(number_in(reinterpret_cast<const std::uint8_t*>(grey.data()) + at));
    return numbers;
}

std::vector<float> sound_in(const std::filesystem::path& movie) {
    const luft::test::Folder folder;
    luft::test::run("ffmpeg -nostdin -v error -i " + luft::test::quoted(movie) +
                    " -map 0:a -af pan='mono|c0=c0' -ar " + std::to_string(kRate) + " -f f32le " +
                    luft::test::quoted(folder / "s"));
    const std::string bytes = luft::test::read_all(folder / "s");
    std::vector<float> samples(bytes.size() / sizeof(float));
    std::memcpy(samples.data(), bytes.data(), samples.size() * sizeof(float));
    // Matroska lets the encoder's delay stand before time 0, where its stamps put it.
    const double start = std::stod(probed(movie, "-select_streams a -show_entries stream=start_time").at(0));
    CHECK(start <= 0);
    samples.erase(samples.begin(), samples.begin() + static_cast<std::ptrdiff_t>(sample(-start)));
    return samples;
}

std::vector<std::string> probed(const std::filesystem::path& file, const std::string& arguments) {
    std::istringstream said(luft::test::run("ffprobe -v error " + arguments + " -of default=nw=1:nk=1 " +
                                            luft::test::quoted(file)));
    std::vector<std::string> lines;
    for (std::string line; std::getline(said, line);)
        if (!line.empty()) lines.push_back(line);
    return lines;
}

double level(const std::vector<float>& samples, double from, double to) {
    double sum = 0;
    REQUIRE(sample(to) <= samples.size());
    for (std::size_t n = sample(from); n < sample(to); ++n)
        sum += double{samples[n]} * samples[n];
    return std::sqrt(sum / static_cast<double>(sample(to) - sample(from)));
}

double tone(const std::vector<float>& samples, double hertz, double from, double to) {
    double c = 0, s = 0;
    REQUIRE(sample(to) <= samples.size());
    for (std::size_t n = sample(from); n < sample(to); ++n) {
        const double angle = 2 * std::numbers::pi * hertz * static_cast<double>(n) / kRate;
        c += samples[n] * std::cos(angle);
        s += samples[n] * std::sin(angle);
    }
    return 2 * std::hypot(c, s) / static_cast<double>(sample(to) - sample(from));
}

double lateness(const std::vector<float>& heard, double at, const std::vector<float>& meant, double there) {
    const std::size_t length = sample(0.1);
    const auto start = static_cast<std::ptrdiff_t>(sample(at));
    const auto middle = static_cast<std::ptrdiff_t>(sample(there));
    const auto most = static_cast<std::ptrdiff_t>(sample(0.03));
    REQUIRE(heard.size() >= sample(at) + length);
    double best = -1;
    std::ptrdiff_t found = 0;
    for (std::ptrdiff_t shift = -most; shift <= most; ++shift) {
        if (middle + shift < 0 ||
            middle + shift + static_cast<std::ptrdiff_t>(length) > static_cast<std::ptrdiff_t>(meant.size()))
            continue;
        double product = 0, one = 0, two = 0;
        for (std::size_t n = 0; n < length; ++n) {
            const double h = heard[static_cast<std::size_t>(start) + n];
            const double m = meant[static_cast<std::size_t>(middle + shift) + n];
            product += h * m;
            one += h * h;
            two += m * m;
        }
        const double likeness = product / std::sqrt(one * two + 1e-12);
        if (likeness > best) {
            best = likeness;
            found = shift;
        }
    }
    INFO("likeness " << best << " at " << at);
    CHECK(best > 0.8);
    return -static_cast<double>(found) / kRate;
}

} // namespace luft::guide::testing
