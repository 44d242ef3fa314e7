// A recording whose every picture carries its number and whose every sample is known.
#pragma once

#include "base/rational.h"
#include "media/media.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace luft::guide::testing {

inline constexpr int kWidth = 64, kHeight = 48;
inline constexpr int kRate = 48000;
inline constexpr double kLength = 10;

/// From 3 to 4 s the sound is a tone of 600 Hz; elsewhere it is noise below about 3 kHz, the same each time.
inline constexpr double kToneFrom = 3, kToneTo = 4, kToneHertz = 600;
/// One channel; both sides of the recording are the same.
const std::vector<float>& sound();

/// Twelve blocks, black or white: the number's bits, the lowest first.
media::Picture numbered(int number);
/// The number in a grey picture of that size.
int number_in(const std::uint8_t* grey);

/// Writes it, H.264 and AAC; the ending decides the container.
void record(const std::filesystem::path& file, Rational frame_rate);

/// A movie as the ffmpeg program decodes it: the number in each picture, and one channel of its sound at 48
/// kHz.
std::vector<int> numbers_in(const std::filesystem::path& movie);
std::vector<float> sound_in(const std::filesystem::path& movie);

/// `ffprobe` with these entries, one value a line.
std::vector<std::string> probed(const std::filesystem::path& file, const std::string& arguments);

/// Root mean square from one time to another.
double level(const std::vector<float>& samples, double from, double to);

/// Amplitude of a tone from one time to another (Goertzel 1958).
double tone(const std::vector<float>& samples, double hertz, double from, double to);

/// By how much `heard` is late at its time `at` against `meant` at its time `there`, in seconds: the best
/// correlation of a tenth of a second, looked for within 30 ms.
double lateness(const std::vector<float>& heard, double at, const std::vector<float>& meant, double there);

} // namespace luft::guide::testing
