// How a picture is turned and mirrored between its file and the screen.
#pragma once

#include "media/handles.h"
#include "media/media.h"

namespace luft::media {

/// One of the eight ways to lay a rectangle on itself: transpose first, then mirror.
struct Turn {
    bool transposed = false;
    bool mirrored_across = false; ///< left and right change places
    bool mirrored_down = false;   ///< top and bottom change places

    bool operator==(const Turn&) const = default;
};

/// From the stream's display matrix (ISO/IEC 14496-12, 8.2.2 and 8.3.2), to the nearest quarter turn.
Turn turn_of(const AVStream& stream);

/// The picture as it is shown.
Picture turned(Picture picture, Turn turn);

} // namespace luft::media
