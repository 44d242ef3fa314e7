// Decoded pictures of any pixel format as movie pictures of one size.
#pragma once

#include "media/handles.h"
#include "media/movie_picture.h"
#include "media/turn.h"

#include <optional>

namespace luft::media {

class PictureFitter {
  public:
    explicit PictureFitter(Turn turn) : turn_(turn) {}

    /// From now on into this matrix (ITU-T H.273), rather than the stream's own.
    void show_in(int matrix) { matrix_ = matrix; }

    /// The picture as it is shown, scaled to fit `width` by `height` (even numbers) in its own shape, black
    /// beside it. Colours keep the matrix of the stream unless another one is set. A frame that is right as
    /// it stands isn't copied. Throws Error(unsupported) when the pixel format can't be converted.
    MoviePicture fit(const AVFrame& frame, AVRational pixel_aspect, int width, int height);

  private:
    /// Into part of a frame, not turned.
    void scale(const AVFrame& from, AVFrame& to, int x, int y, int width, int height);

    [[nodiscard]] int target(const AVFrame& frame) const;

    Turn turn_;
    std::optional<int> matrix_;
    Scaler scaler_;
};

} // namespace luft::media
