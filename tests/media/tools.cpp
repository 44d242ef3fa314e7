#include "media/tools.h"

#include "media/media.h"
#include "tools/files.h"
#include "tools/programs.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstring>
#include <numbers>
#include <sstream>

using namespace luft::test;

namespace luft::media::test {

void ffmpeg(const std::string& arguments) {
    run("ffmpeg -nostdin -v error -y " + arguments);
}

std::vector<std::string> ffprobe(const std::filesystem::path& file, const std::string& streams,
                                 const std::string& entries) {
    std::istringstream said(run("ffprobe -v error " + (streams.empty() ? "" : "-select_streams " + streams) +
                                " -show_entries " + entries + " -of default=nw=1:nk=1 " + quoted(file)));
    std::vector<std::string> lines;
    for (std::string line; std::getline(said, line);)
        if (!line.empty()) lines.push_back(line);
    return lines;
}

std::size_t Bytes::read_at(std::int64_t offset, std::span<std::byte> into) {
    if (offset < 0 || offset >= size()) return 0;
    const std::size_t n = std::min(into.size(), bytes_.size() - static_cast<std::size_t>(offset));
    std::memcpy(into.data(), bytes_.data() + offset, n);
    return n;
}

std::unique_ptr<ByteSource> in_memory(std::string name, std::string bytes) {
    return std::make_unique<Bytes>(std::move(name), std::move(bytes));
}

double sweep(double t) {
    if (t < 0 || t >= kSweepLength) return 0;
    constexpr double kFrom = 300;
    constexpr double kTo = 3000;
    return 0.5 * std::sin(2 * std::numbers::pi * (kFrom * t + (kTo - kFrom) * t * t / (2 * kSweepLength)));
}

std::vector<float> sound_with_sweep(double at, double length, int rate, int channels) {
    std::vector<float> samples;
    for (int n = 0; n < std::lround(length * rate); ++n)
        for (int c = 0; c < channels; ++c)
            samples.push_back(static_cast<float>(sweep(static_cast<double>(n) / rate - at)));
    return samples;
}

void write_wav(const std::filesystem::path& file, const std::vector<float>& samples, int rate, int channels) {
    std::string bytes;
    const auto number = [&](std::uint32_t value, int size) {
        for (int i = 0; i < size; ++i)
            bytes.push_back(static_cast<char>(value >> (8 * i)));
    };
    const auto data = static_cast<std::uint32_t>(2 * samples.size());
    bytes += "RIFF";
    number(36 + data, 4);
    bytes += "WAVEfmt ";
    number(16, 4);
    number(1, 2); // PCM
    number(static_cast<std::uint32_t>(channels), 2);
    number(static_cast<std::uint32_t>(rate), 4);
    number(static_cast<std::uint32_t>(2 * rate * channels), 4);
    number(static_cast<std::uint32_t>(2 * channels), 2);
    number(16, 2);
    bytes += "data";
    number(data, 4);
    for (const float x : samples)
        number(static_cast<std::uint32_t>(std::lround(x * 32767)), 2);
    write_all(file, bytes);
}

float Heard::peak(double from, double to, std::size_t channel) const {
    float peak = 0;
    const auto end = std::min(count(), static_cast<std::size_t>(std::lround(to * format.rate.per_second)));
    for (auto i = static_cast<std::size_t>(std::lround(from * format.rate.per_second)); i < end; ++i)
        peak = std::max(peak, std::abs(samples[i * format.channels.size() + channel]));
    return peak;
}

Heard hear(SampleSource& source) {
    Heard heard{source.format(), {}};
    while (const auto block = source.read()) {
        REQUIRE(block->first == static_cast<std::int64_t>(heard.count()));
        REQUIRE_FALSE(block->samples.empty());
        heard.samples.insert(heard.samples.end(), block->samples.begin(), block->samples.end());
    }
    return heard;
}

Heard hear(const std::filesystem::path& file) {
    return hear(*open_sound(open_file(file)));
}

double where_is_sweep(const Heard& heard, double about) {
    constexpr double kReach = 0.08;
    constexpr double kStep = 0.0001;
    constexpr double kPoint = 0.00015; // 6667 a second: above twice the sweep's highest frequency
    const auto sample = [&](double t) {
        const auto i = static_cast<std::int64_t>(std::floor(t * heard.format.rate.per_second + 0.5));
        if (i < 0 || i >= static_cast<std::int64_t>(heard.count())) return 0.0;
        return static_cast<double>(heard.samples[static_cast<std::size_t>(i) * heard.format.channels.size()]);
    };
    static const std::vector<double> pattern = [] {
        std::vector<double> points;
        for (double t = 0; t < kSweepLength; t += kPoint)
            points.push_back(sweep(t));
        return points;
    }();
    double best = 0;
    double place = -1;
    for (double at = about - kReach; at <= about + kReach; at += kStep) {
        double sum = 0;
        for (std::size_t i = 0; i < pattern.size(); ++i)
            sum += pattern[i] * sample(at + kPoint * static_cast<double>(i));
        if (sum > best) {
            best = sum;
            place = at;
        }
    }
    return place;
}

} // namespace luft::media::test
