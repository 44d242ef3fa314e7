// FFmpeg's channel layouts as channel roles.
#pragma once

#include "base/error.h"
#include "base/samples.h"
#include "media/handles.h"

#include <string>

namespace luft::media {

inline constexpr int kMostChannels = 64;
inline constexpr int kMostRate = 768000; // the highest in use, for measuring
/// Half the telephone's: below, hardly a voice is left, and a small file lasts for days. Common practice, no
/// source.
inline constexpr int kLeastRate = 4000;

/// The layout, or the usual one for that many channels when the file doesn't say. Throws Error(unsupported)
/// on more than 64 channels, Error(unreadable) on none; `name` is the file's.
Layout known_layout(const AVChannelLayout& layout, const std::string& name);

/// Throws Error(unreadable) when the rate isn't from 4000 to 768,000.
SampleRate known_rate(int rate, const std::string& name);

/// Why a recording of more than kMostLength isn't taken.
Error too_long(const std::string& name);

/// The role of each channel, in the order of the samples. A single channel is the centre.
std::vector<ChannelRole> roles(const Layout& layout);

} // namespace luft::media
