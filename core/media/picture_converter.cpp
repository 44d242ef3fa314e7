#include "media/picture_converter.h"

#include "base/error.h"
#include "media/pixel_range.h"
#include "media/shape.h"

#include <utility>

namespace luft::media {
Picture PictureConverter::convert(const AVFrame& frame, AVRational pixel_aspect, Seconds time,
                                  int most_width) {
    Shape shape = square_pixels(frame.width, frame.height, pixel_aspect);
    if (turn_.transposed) {
        std::swap(shape.width, shape.height);
        shape = scaled_down(shape, most_width);
        std::swap(shape.width, shape.height);
    } else {
        shape = scaled_down(shape, most_width);
    }
    const auto [format, full_range] = without_range(frame);
    constexpr int kHow = SWS_BICUBIC | SWS_ACCURATE_RND | SWS_FULL_CHR_H_INT | SWS_BITEXACT;
    scaler_.reset(sws_getCachedContext(scaler_.release(), frame.width, frame.height, format, shape.width,
                                       shape.height, AV_PIX_FMT_RGB24, kHow, nullptr, nullptr, nullptr));
    if (!scaler_)
        throw Error(Fault::unsupported, "The video's pictures are of a kind that can't be converted.");
    // The matrix numbers of the scaler are those of the streams (ITU-T H.273); 'unspecified' is ITU-R BT.601.
    const int* matrix = sws_getCoefficients(frame.colorspace);
    constexpr int kPlain = 1 << 16; // 1.0 in the scaler's fixed point: contrast and saturation as they are
    sws_setColorspaceDetails(scaler_.get(), matrix, full_range ? 1 : 0, sws_getCoefficients(SWS_CS_DEFAULT),
                             1, 0, kPlain, kPlain);

    // The scaler may write past the end of a row, up to its vector width.
    constexpr int kAlign = 64;
    const Frame rgb = new_frame();
    rgb->format = AV_PIX_FMT_RGB24;
    rgb->width = shape.width;
    rgb->height = shape.height;
    if (av_frame_get_buffer(rgb.get(), kAlign) < 0) throw std::bad_alloc();
    if (sws_scale(scaler_.get(), frame.data, frame.linesize, 0, frame.height, rgb->data, rgb->linesize) < 0)
        throw Error(Fault::unsupported, "The video's pictures can't be converted.");

    Picture picture{shape.width, shape.height, time, {}};
    const auto row = std::size_t{3} * static_cast<std::size_t>(shape.width);
    picture.rgb.reserve(row * shape.height);
    for (int y = 0; y < shape.height; ++y) {
        const std::uint8_t* from = rgb->data[0] + std::ptrdiff_t{rgb->linesize[0]} * y;
        picture.rgb.insert(picture.rgb.end(), from, from + row);
    }
    return turned(std::move(picture), turn_);
}

} // namespace luft::media
