#include "media/picture_fitter.h"

#include "base/error.h"
#include "media/pixel_range.h"
#include "media/planes.h"
#include "media/shape.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace luft::media {
namespace {

int even(double length, int most) {
    return std::clamp(2 * static_cast<int>(std::lround(length / 2)), 2, most);
}

/// The largest size of that shape, in even numbers.
Shape fitted(Shape shape, int width, int height) {
    const double zoom =
        std::min(static_cast<double>(width) / shape.width, static_cast<double>(height) / shape.height);
    return {even(shape.width * zoom, width), even(shape.height * zoom, height)};
}

/// The same pixels under a frame of its own, without what the decoder says of it.
std::shared_ptr<AVFrame> shared(const AVFrame& frame) {
    Frame own = new_frame();
    if (av_frame_ref(own.get(), &frame) < 0) throw std::bad_alloc();
    while (own->nb_side_data > 0)
        av_frame_remove_side_data(own.get(), own->side_data[0]->type);
    own->pict_type = AV_PICTURE_TYPE_NONE; // else the encoder would take it for an order
    return own;
}

void turn_planes(const AVFrame& from, AVFrame& to, int x, int y, Turn turn) {
    for (const Plane& p : kPlanes) {
        const int columns = from.width / p.divided, rows = from.height / p.divided;
        const int width = turn.transposed ? rows : columns, height = turn.transposed ? columns : rows;
        for (int row = 0; row < height; ++row) {
            std::uint8_t* out = at(to, p, x, y) + std::ptrdiff_t{to.linesize[p.index]} * row;
            for (int column = 0; column < width; ++column) {
                int from_x = turn.mirrored_across ? width - 1 - column : column;
                int from_y = turn.mirrored_down ? height - 1 - row : row;
                if (turn.transposed) std::swap(from_x, from_y);
                out[column] = from.data[p.index][std::ptrdiff_t{from.linesize[p.index]} * from_y + from_x];
            }
        }
    }
}

/// The scaler takes any length of rows, but writes past their ends: what lies beside is black again after.
void blacken_beside(AVFrame& frame, int x, int y, Shape shape) {
    const int right = x + shape.width, below = y + shape.height;
    blacken(frame, 0, 0, frame.width, y);
    blacken(frame, 0, below, frame.width, frame.height - below);
    blacken(frame, 0, y, x, shape.height);
    blacken(frame, right, y, frame.width - right, shape.height);
}

} // namespace

/// The matrix that a frame's colours are made for. What isn't said isn't guessed at: it stays.
int PictureFitter::target(const AVFrame& frame) const {
    const int own = is_rgb(frame) ? SWS_CS_ITU601 : frame.colorspace;
    const bool known = own != AVCOL_SPC_UNSPECIFIED && matrix_ && *matrix_ != AVCOL_SPC_UNSPECIFIED;
    return known ? *matrix_ : own;
}

void PictureFitter::scale(const AVFrame& from, AVFrame& to, int x, int y, int width, int height) {
    const auto [format, full_range] = without_range(from);
    // A guide is watched in passing and written often: the quicker scaler does.
    scaler_.reset(sws_getCachedContext(scaler_.release(), from.width, from.height, format, width, height,
                                       AV_PIX_FMT_YUV420P, SWS_BILINEAR, nullptr, nullptr, nullptr));
    if (!scaler_)
        throw Error(Fault::unsupported, "The video's pictures are of a kind that can't be converted.");
    // RGB has no matrix of its own: it gets the one that a movie is read by whose colours aren't said.
    const int* matrix = sws_getCoefficients(is_rgb(from) ? SWS_CS_ITU601 : from.colorspace);
    constexpr int kPlain = 1 << 16; // 1.0 in the scaler's fixed point
    sws_setColorspaceDetails(scaler_.get(), matrix, full_range ? 1 : 0, sws_getCoefficients(target(from)), 0,
                             0, kPlain, kPlain);
    // The scaler reads four of each.
    std::uint8_t* rows[4] = {at(to, kPlanes[0], x, y), at(to, kPlanes[1], x, y), at(to, kPlanes[2], x, y)};
    const int strides[4] = {to.linesize[0], to.linesize[1], to.linesize[2]};
    if (sws_scale(scaler_.get(), from.data, from.linesize, 0, from.height, rows, strides) < 0)
        throw Error(Fault::unsupported, "The video's pictures can't be converted.");
}

MoviePicture PictureFitter::fit(const AVFrame& frame, AVRational pixel_aspect, int width, int height) {
    Shape shown = square_pixels(frame.width, frame.height, pixel_aspect);
    if (turn_.transposed) std::swap(shown.width, shown.height);
    const Shape shape = fitted(shown, width, height);
    const auto [format, full_range] = without_range(frame);
    if (turn_ == Turn{} && target(frame) == frame.colorspace && format == AV_PIX_FMT_YUV420P && !full_range &&
        frame.width == width && frame.height == height && shape.width == width && shape.height == height)
        return MoviePicture(shared(frame));

    auto out = new_planes(width, height);
    const int x = (width - shape.width) / 4 * 2, y = (height - shape.height) / 4 * 2;
    if (turn_ == Turn{}) {
        scale(frame, *out, x, y, shape.width, shape.height);
    } else {
        Shape lying = shape;
        if (turn_.transposed) std::swap(lying.width, lying.height);
        const auto plain = new_planes(lying.width, lying.height);
        scale(frame, *plain, 0, 0, lying.width, lying.height);
        turn_planes(*plain, *out, x, y, turn_);
    }
    blacken_beside(*out, x, y, shape);
    return MoviePicture(std::move(out));
}

} // namespace luft::media
