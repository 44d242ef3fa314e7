#include "media/shape.h"

#include <algorithm>
#include <cmath>

namespace luft::media {

Shape square_pixels(int width, int height, AVRational pixel_aspect) {
    constexpr double kMostAspect = 4;
    if (pixel_aspect.num <= 0 || pixel_aspect.den <= 0) return {width, height};
    const double aspect = av_q2d(pixel_aspect);
    if (aspect > kMostAspect || aspect < 1 / kMostAspect) return {width, height};
    return {std::max(1, static_cast<int>(std::lround(width * aspect))), height};
}

Shape scaled_down(Shape shape, int most_width) {
    if (most_width <= 0 || shape.width <= most_width) return shape;
    const double height = static_cast<double>(shape.height) * most_width / shape.width;
    return {most_width, std::max(1, static_cast<int>(std::lround(height)))};
}

} // namespace luft::media
