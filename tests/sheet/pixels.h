// What is on a drawn picture.
#pragma once

#include "sheet/canvas.h"

#include <cstdint>
#include <vector>

namespace luft::sheet::test {

/// Pixels of exactly that colour.
inline int count(Canvas& canvas, Colour c) {
    const auto pixels = canvas.pixels();
    int n = 0;
    for (int y = 0; y < pixels.height; ++y)
        for (int x = 0; x < pixels.width; ++x) {
            const auto* p = &pixels.bytes[std::size_t(y) * std::size_t(pixels.stride) + std::size_t(x) * 4];
            n += p[0] == c.blue && p[1] == c.green && p[2] == c.red;
        }
    return n;
}

/// All of a picture, to compare.
inline std::vector<std::uint8_t> bytes(Canvas& canvas) {
    const auto p = canvas.pixels();
    return {p.bytes.begin(), p.bytes.end()};
}

} // namespace luft::sheet::test
