// FFmpeg's settings that hold for the whole process.
#pragma once

#include <string>

namespace luft::media {

/// Silences FFmpeg's log, which would go to the terminal, and bounds what one of its allocations may take, so
/// that a hostile header can't ask for gigabytes. Any number of calls does what one does.
void settle_library();

/// What an FFmpeg error code means, in its own words.
std::string meaning(int code);

} // namespace luft::media
