// What a decoded picture's numbers mean.
#pragma once

#include "media/handles.h"

#include <utility>

namespace luft::media {

/// The pixel format without its range, and whether the range is full. FFmpeg's old 'J' formats say 'full
/// range' in the pixel format; the scaler wants it said apart.
std::pair<AVPixelFormat, bool> without_range(const AVFrame& frame);

/// Whether they are red, green and blue, as such or in a palette: then its colour matrix says nothing on what
/// is made of it.
bool is_rgb(const AVFrame& frame);

} // namespace luft::media
