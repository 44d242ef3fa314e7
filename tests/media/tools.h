// What the media tests share: the ffmpeg and ffprobe programs of the system, and a sound whose place in time
// can be measured through any codec.
#pragma once

#include "base/bytes.h"
#include "base/error.h"
#include "base/samples.h"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace luft::media::test {

/// `ffmpeg` with these arguments, quiet, overwriting.
void ffmpeg(const std::string& arguments);

/// What `ffprobe` says about the file, one value a line: its -select_streams and -show_entries.
std::vector<std::string> ffprobe(const std::filesystem::path& file, const std::string& streams,
                                 const std::string& entries);

/// Bytes in memory, under a name.
class Bytes final : public ByteSource {
  public:
    Bytes(std::string name, std::string bytes) : name_(std::move(name)), bytes_(std::move(bytes)) {}
    [[nodiscard]] std::int64_t size() const override { return static_cast<std::int64_t>(bytes_.size()); }
    [[nodiscard]] std::string name() const override { return name_; }
    std::size_t read_at(std::int64_t offset, std::span<std::byte> into) override;

  private:
    std::string name_;
    std::string bytes_;
};

std::unique_ptr<ByteSource> in_memory(std::string name, std::string bytes);

/// A sweep of 0.3 s from 300 to 3000 Hz: its correlation with itself has one narrow peak.
inline constexpr double kSweepLength = 0.3;
double sweep(double seconds_from_its_start);

/// Interleaved samples with the sweep at `at`, silence elsewhere.
std::vector<float> sound_with_sweep(double at, double length, int rate, int channels);

/// The same as a 16-bit WAV file, written byte by byte (RIFF, 1991), without the code under test.
void write_wav(const std::filesystem::path& file, const std::vector<float>& samples, int rate, int channels);

/// A whole sound; the test fails when its blocks don't follow each other from 0.
struct Heard {
    AudioFormat format;
    std::vector<float> samples;
    [[nodiscard]] std::size_t count() const { return samples.size() / format.channels.size(); }
    [[nodiscard]] double length() const { return static_cast<double>(count()) / format.rate.per_second; }
    /// Loudest absolute sample of a channel between two times.
    [[nodiscard]] float peak(double from, double to, std::size_t channel = 0) const;
};
Heard hear(SampleSource& source);
Heard hear(const std::filesystem::path& file);

/// Time at which the sweep starts, looked for within 80 ms of `about`, by correlation.
double where_is_sweep(const Heard& heard, double about);

} // namespace luft::media::test
