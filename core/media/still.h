// One picture out, as a file that any program opens.
#pragma once

#include "media/media.h"

#include <filesystem>

namespace luft::media {

enum class StillKind {
    png, ///< every pixel as it is
    jpeg ///< small: baseline JFIF, colour at full resolution
};

/// Writes a picture, whole or not at all. Throws Error(cannot_write), Error(bad_request) for a picture
/// without pixels, Error(unsupported) when the FFmpeg build lacks the encoder or the picture is too large for
/// it.
void write_still(const Picture& picture, const std::filesystem::path& file, StillKind kind);

} // namespace luft::media
