// How large a picture is shown.
#pragma once

#include "media/handles.h"

namespace luft::media {

struct Shape {
    int width = 0;
    int height = 0;
};

/// A stored picture with square pixels: a pixel aspect ratio other than 1 stretches the width. Ratios beyond
/// 1:4 and 4:1 are taken for damage and ignored.
Shape square_pixels(int width, int height, AVRational pixel_aspect);

/// Not wider than `most_width` (0 = any), in the same shape; never larger than it was, never below 1.
Shape scaled_down(Shape shape, int most_width);

} // namespace luft::media
