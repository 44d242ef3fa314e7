#include "guide/scenery.h"

namespace luft::guide {
namespace {

class Video final : public Scenery {
  public:
    Video(std::unique_ptr<ByteSource> recording, int width, int height,
          std::optional<media::ColourCode> colours)
        : pictures_(media::open_pictures(std::move(recording))), width_(width), height_(height) {
        if (colours) pictures_->show_in(*colours);
    }

    media::MoviePicture at(Rational media_time) override {
        return pictures_->movie_at(seconds(media_time), width_, height_);
    }

    [[nodiscard]] media::ColourCode colours() override { return pictures_->colours(); }

  private:
    std::unique_ptr<media::PictureSource> pictures_;
    int width_, height_;
};

} // namespace

std::unique_ptr<Scenery> video_scenery(std::unique_ptr<ByteSource> recording, int width, int height,
                                       std::optional<media::ColourCode> colours) {
    return std::make_unique<Video>(std::move(recording), width, height, colours);
}

} // namespace luft::guide
