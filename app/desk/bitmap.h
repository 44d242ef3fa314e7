// From the sheet's canvas to the window's bitmaps.
#pragma once

#include "sheet/canvas.h"

#include <wx/bitmap.h>
#include <wx/image.h>

namespace luft::desk {

/// `scale` pixels of the picture make one unit of the window.
inline wxBitmap bitmap_of(sheet::Canvas& canvas, double scale = 1) {
    const auto pixels = canvas.pixels();
    wxImage image(pixels.width, pixels.height, false);
    unsigned char* to = image.GetData();
    for (int y = 0; y < pixels.height; ++y) {
        const std::uint8_t* from =
            &pixels.bytes[static_cast<std::size_t>(y) * static_cast<std::size_t>(pixels.stride)];
        for (int x = 0; x < pixels.width; ++x, from += 4, to += 3) {
            to[0] = from[2];
            to[1] = from[1];
            to[2] = from[0];
        }
    }
    return {image, wxBITMAP_SCREEN_DEPTH, scale};
}

} // namespace luft::desk
