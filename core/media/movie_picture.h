// One picture as movies hold it, so that it reaches the encoder without a detour through RGB.
#pragma once

#include "media/media.h"

#include <memory>

struct AVFrame;

namespace luft::media {

/// 8-bit luma with colour at half width and height (4:2:0), video range. Copies share their pixels until one
/// of them is drawn on, so that a picture that stands costs nothing.
class MoviePicture {
  public:
    /// Throws Error(bad_request) unless both are even and above 0.
    static MoviePicture black(int width, int height);
    /// Colours by ITU-R BT.601. Throws Error(bad_request) on an odd size.
    explicit MoviePicture(const Picture& picture);

    [[nodiscard]] int width() const;
    [[nodiscard]] int height() const;

    /// Lays a patch over it, its top left corner at (x, y), each rounded down to an even number. What would
    /// lie outside is left out.
    void lay(const MoviePicture& patch, int x, int y);

    /// For this folder: the frame itself, of format yuv420p.
    explicit MoviePicture(std::shared_ptr<AVFrame> frame) : frame_(std::move(frame)) {}
    [[nodiscard]] const AVFrame& frame() const { return *frame_; }

  private:
    std::shared_ptr<AVFrame> frame_;
};

} // namespace luft::media
