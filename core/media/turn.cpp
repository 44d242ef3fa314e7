#include "media/turn.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace luft::media {

Turn turn_of(const AVStream& stream) {
    size_t size = 0;
    const auto* bytes = av_stream_get_side_data(&stream, AV_PKT_DATA_DISPLAYMATRIX, &size);
    if (bytes == nullptr || size < 9 * sizeof(std::int32_t)) return {};
    const auto* m = reinterpret_cast<const std::int32_t*>(bytes);
    // x' = a x + c y, y' = b x + d y.
    const std::int64_t a = m[0], b = m[1], c = m[3], d = m[4];
    if (std::abs(b) > std::abs(a)) return {true, c < 0, b < 0};
    return {false, a < 0, d < 0};
}

Picture turned(Picture picture, Turn turn) {
    if (turn == Turn{}) return picture;
    Picture out{picture.width, picture.height, picture.time, {}};
    if (turn.transposed) std::swap(out.width, out.height);
    out.rgb.resize(picture.rgb.size());
    std::size_t to = 0;
    for (int y = 0; y < out.height; ++y)
        for (int x = 0; x < out.width; ++x, to += 3) {
            int from_x = turn.mirrored_across ? out.width - 1 - x : x;
            int from_y = turn.mirrored_down ? out.height - 1 - y : y;
            if (turn.transposed) std::swap(from_x, from_y);
            const std::size_t from = 3 * (static_cast<std::size_t>(from_y) * picture.width + from_x);
            std::copy_n(picture.rgb.begin() + static_cast<std::ptrdiff_t>(from), 3,
                        out.rgb.begin() + static_cast<std::ptrdiff_t>(to));
        }
    return out;
}

} // namespace luft::media
