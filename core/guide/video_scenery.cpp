#include "guide/scenery.h"

namespace luft::guide {
namespace {

class Video final : public Scenery {
  public:
    Video(std::unique_ptr<ByteSource> recording, int width, int height)
        : pictures_(media::open_pictures(std::move(recording))), width_(width), height_(height) {}

    media::MoviePicture at(Rational media_time) override {
        return pictures_->movie_at(seconds(media_time), width_, height_);
    }

    [[nodiscard]] media::ColourCode colours() override { return pictures_->colours(); }

  private:
    std::unique_ptr<media::PictureSource> pictures_;
    int width_, height_;
};

} // namespace

std::unique_ptr<Scenery> video_scenery(std::unique_ptr<ByteSource> recording, int width, int height) {
    return std::make_unique<Video>(std::move(recording), width, height);
}

} // namespace luft::guide
