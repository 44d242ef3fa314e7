// Frame counts as timecode, by SMPTE ST 12-1.
#pragma once

#include "base/rational.h"

#include <cstdint>
#include <string>

namespace luft::script {

/// "HH:MM:SS:FF", with ';' before the frames where drop-frame counting is asked for and the rate is
/// 30000/1001 or 60000/1001 (frame numbers 0 and 1, or 0 to 3, are skipped each minute but every tenth).
/// Other fractional rates count at the nearest whole rate. Wraps after 24 hours. Throws Error(bad_request)
/// for a rate of 0 or less.
std::string timecode(std::int64_t frame, Rational frame_rate, bool drop_frame);

/// Reads it back. Throws Error(bad_request) for text that isn't timecode and for numbers that drop-frame
/// skips.
std::int64_t frame_of_timecode(const std::string& text, Rational frame_rate);

/// True for the rates that drop-frame counting is defined for.
bool can_drop_frames(Rational frame_rate);

} // namespace luft::script
