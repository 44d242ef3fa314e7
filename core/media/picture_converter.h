// Decoded pictures of any pixel format as RGB, in the shape and size they are shown in.
#pragma once

#include "media/handles.h"
#include "media/media.h"
#include "media/turn.h"

namespace luft::media {

class PictureConverter {
  public:
    explicit PictureConverter(Turn turn) : turn_(turn) {}

    /// `most_width` is that of the shown picture, 0 = any. Throws Error(unsupported) when the pixel format
    /// can't be converted.
    Picture convert(const AVFrame& frame, AVRational pixel_aspect, Seconds time, int most_width);

  private:
    Turn turn_;
    Scaler scaler_;
};

} // namespace luft::media
