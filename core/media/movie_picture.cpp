#include "media/movie_picture.h"

#include "base/error.h"
#include "media/planes.h"

#include <algorithm>
#include <cstring>

namespace luft::media {

std::shared_ptr<AVFrame> new_planes(int width, int height) {
    if (width < 2 || height < 2 || width % 2 != 0 || height % 2 != 0)
        throw Error(Fault::bad_request, "A movie's picture has an even width and an even height.");
    Frame frame = new_frame();
    frame->format = AV_PIX_FMT_YUV420P;
    frame->width = width;
    frame->height = height;
    // The scaler may write past the end of a row, up to its vector width.
    constexpr int kAlign = 64;
    if (av_frame_get_buffer(frame.get(), kAlign) < 0) throw std::bad_alloc();
    return frame;
}

Frame padded(const Picture& picture) {
    const auto row = std::size_t{3} * static_cast<std::size_t>(picture.width);
    if (picture.rgb.size() != row * static_cast<std::size_t>(picture.height))
        throw Error(Fault::bad_request, "A picture hasn't as many pixels as its size says.");
    Frame frame = new_frame();
    frame->format = AV_PIX_FMT_RGB24;
    frame->width = picture.width;
    frame->height = picture.height;
    if (av_frame_get_buffer(frame.get(), 0) < 0) throw std::bad_alloc();
    for (int y = 0; y < picture.height; ++y)
        std::memcpy(frame->data[0] + std::ptrdiff_t{frame->linesize[0]} * y,
                    picture.rgb.data() + row * static_cast<std::size_t>(y), row);
    return frame;
}

void blacken(AVFrame& frame, int x, int y, int width, int height) {
    for (const Plane& p : kPlanes)
        for (int row = y / p.divided; row < (y + height) / p.divided; ++row)
            std::memset(at(frame, p, x, row * p.divided), p.black,
                        static_cast<std::size_t>(width / p.divided));
}

MoviePicture MoviePicture::black(int width, int height) {
    auto frame = new_planes(width, height);
    blacken(*frame, 0, 0, width, height);
    return MoviePicture(std::move(frame));
}

MoviePicture::MoviePicture(const Picture& picture) : frame_(new_planes(picture.width, picture.height)) {
    const Frame rgb = padded(picture);
    const Scaler scaler(sws_getContext(picture.width, picture.height, AV_PIX_FMT_RGB24, picture.width,
                                       picture.height, AV_PIX_FMT_YUV420P, SWS_BICUBIC | SWS_ACCURATE_RND,
                                       nullptr, nullptr, nullptr));
    if (!scaler || sws_scale(scaler.get(), rgb->data, rgb->linesize, 0, picture.height, frame_->data,
                             frame_->linesize) < 0)
        throw Error(Fault::internal, "A picture can't be converted.");
}

int MoviePicture::width() const {
    return frame_->width;
}

int MoviePicture::height() const {
    return frame_->height;
}

void MoviePicture::lay(const MoviePicture& patch, int x, int y) {
    x -= x & 1;
    y -= y & 1;
    const int left = std::max(x, 0), right = std::min(x + patch.width(), width());
    const int top = std::max(y, 0), bottom = std::min(y + patch.height(), height());
    if (left >= right || top >= bottom) return;
    if (frame_.use_count() > 1 || av_frame_is_writable(frame_.get()) == 0) {
        auto own = new_planes(width(), height());
        if (av_frame_copy(own.get(), frame_.get()) < 0) throw std::bad_alloc();
        frame_ = std::move(own);
    }
    for (const Plane& p : kPlanes)
        for (int row = top; row < bottom; row += p.divided)
            std::memcpy(at(*frame_, p, left, row), at(patch.frame(), p, left - x, row - y),
                        static_cast<std::size_t>((right - left) / p.divided));
}

} // namespace luft::media
