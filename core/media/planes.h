// The three planes of a 4:2:0 picture. Stays inside core/media.
#pragma once

#include "media/handles.h"
#include "media/media.h"

#include <array>
#include <cstdint>
#include <memory>

namespace luft::media {

struct Plane {
    int index = 0;
    int divided = 1; ///< its width and height are the picture's over this
    int black = 0;   ///< in video range (ITU-R BT.601)
};
inline constexpr std::array<Plane, 3> kPlanes{Plane{0, 1, 16}, Plane{1, 2, 128}, Plane{2, 2, 128}};

/// The byte of the pixel (x, y) of the picture; both even.
inline std::uint8_t* at(const AVFrame& frame, const Plane& p, int x, int y) {
    return frame.data[p.index] + std::ptrdiff_t{frame.linesize[p.index]} * (y / p.divided) + x / p.divided;
}

/// A frame of yuv420p whose rows have room behind them. Throws Error(bad_request) on an odd size.
std::shared_ptr<AVFrame> new_planes(int width, int height);

/// The same pixels in a frame whose rows have room behind them: the scaler reads past the end of a picture.
/// Throws Error(bad_request) when there aren't as many as the size says.
Frame padded(const Picture& picture);

/// All four even.
void blacken(AVFrame& frame, int x, int y, int width, int height);

} // namespace luft::media
