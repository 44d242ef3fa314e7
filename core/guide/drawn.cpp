#include "guide/drawn.h"

namespace luft::guide {

media::MoviePicture drawn(sheet::Canvas& canvas) {
    const sheet::Canvas::Pixels pixels = canvas.pixels();
    media::Picture picture{pixels.width, pixels.height, Seconds(0), {}};
    picture.rgb.reserve(std::size_t{3} * static_cast<std::size_t>(pixels.width) * pixels.height);
    for (int y = 0; y < pixels.height; ++y) {
        const std::uint8_t* row = pixels.bytes.data() + std::ptrdiff_t{pixels.stride} * y;
        for (int x = 0; x < pixels.width; ++x, row += 4) // blue, green, red
            picture.rgb.insert(picture.rgb.end(), {row[2], row[1], row[0]});
    }
    return media::MoviePicture(picture);
}

} // namespace luft::guide
