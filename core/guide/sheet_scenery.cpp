#include "guide/drawn.h"
#include "guide/scenery.h"
#include "sheet/draw.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace luft::guide {
namespace {

// Sizes in units, of which the picture is 720 high; chosen by eye.
constexpr double kHigh = 720;
constexpr double kEdge = 36;
constexpr double kTop = 92; ///< under the title
constexpr double kFoot = 640;
constexpr double kGap = 18;
constexpr double kHighest = 350; ///< of the row that sounds
constexpr double kZoom = 1.6;
constexpr double kLeastZoom = 0.5; ///< a next row that would have to be smaller isn't shown
constexpr double kNextCover = 0.5; ///< of the paper over the next row

class Sheet final : public Scenery {
  public:
    Sheet(const profile::Source& song, int width, int height)
        : width_(width), height_(height), unit_(height / kHigh), measuring_(sheet::Canvas::picture(1, 1)),
          layout_(laid_out(song)) {}

    media::MoviePicture at(Rational media_time) override {
        if (layout_.rows().empty()) return page_ ? *page_ : page_.emplace(page(0));
        const Seconds t(media_time.as_double());
        const std::size_t row = layout_.row_of(t);
        if (!page_ || row_ != row) {
            page_ = page(row);
            playhead_ = playhead(row);
            row_ = row;
        }
        media::MoviePicture picture = *page_;
        const double x = kEdge + layout_.x_of(row, t) * zoom(row, kHighest);
        picture.lay(*playhead_, static_cast<int>(std::lround(x * unit_)) - playhead_->width() / 2,
                    static_cast<int>(kTop * unit_));
        return picture;
    }

    [[nodiscard]] media::ColourCode colours() override { return {}; }

  private:
    [[nodiscard]] double wide() const { return width_ / unit_; }

    [[nodiscard]] sheet::Layout laid_out(const profile::Source& song) const {
        const auto measure = [this](double width, std::string_view words, sheet::Type type, int most) {
            return measuring_.paragraph_height(width, words, type, most);
        };
        const auto width_of = [this](std::string_view word) {
            return measuring_.extent(word, {13.5, false, false}).width; // as sheet::kSungWord
        };
        const double width = (wide() - 2 * kEdge) / kZoom;
        return {song,
                {.width = width,
                 .per_second = sheet::fitting_scale(song, width, 0),
                 .margin = 0,
                 .wanted = [](const project::Moment& m) { return m.state == project::MarkState::kept; }},
                measure,
                width_of};
    }

    /// So that the row isn't higher than that.
    [[nodiscard]] double zoom(std::size_t row, double highest) const {
        return std::min(kZoom, highest / layout_.places()[row].height);
    }

    /// As high as its row.
    [[nodiscard]] media::MoviePicture playhead(std::size_t row) const {
        const double high = layout_.places()[row].height * zoom(row, kHighest);
        const int height = std::max(1, static_cast<int>(high * unit_ / 2)) * 2;
        const int width = std::max(1, static_cast<int>(std::lround(2 * unit_))) * 2;
        sheet::Canvas canvas = sheet::Canvas::picture(width, height);
        canvas.clear(look_.colours.playhead);
        return drawn(canvas);
    }

    [[nodiscard]] media::MoviePicture page(std::size_t row) const {
        sheet::Canvas canvas = sheet::Canvas::picture(width_, height_);
        canvas.clear(look_.colours.paper);
        canvas.zoom(unit_);
        heading(canvas);
        if (row < layout_.rows().size()) draw(canvas, row, kTop, zoom(row, kHighest));
        if (row + 1 < layout_.rows().size()) {
            const double top = kTop + layout_.places()[row].height * zoom(row, kHighest) + kGap;
            const double size = zoom(row + 1, kFoot - top);
            if (size >= kLeastZoom) {
                draw(canvas, row + 1, top, size);
                canvas.box(0, top, wide(), kHigh - top, look_.colours.paper.with_cover(kNextCover));
            }
        }
        return drawn(canvas);
    }

    void draw(sheet::Canvas& canvas, std::size_t row, double top, double zoom) const {
        canvas.save();
        canvas.move(kEdge, top);
        canvas.zoom(zoom);
        sheet::draw_row(canvas, layout_, row, look_);
        canvas.restore();
    }

    void heading(sheet::Canvas& canvas) const {
        const profile::Source& song = layout_.source();
        constexpr sheet::Type kTitle{24, true, false}, kSinger{19, false, true};
        canvas.text(kEdge, 50, song.piece.title, kTitle, look_.colours.ink);
        canvas.text(wide() - kEdge, 50, song.performance.performer, kSinger, look_.colours.soft,
                    sheet::Anchor::end);
    }

    int width_, height_;
    double unit_; ///< pixels
    sheet::Look look_ = {};
    sheet::Canvas measuring_;
    sheet::Layout layout_;
    std::size_t row_ = 0;
    std::optional<media::MoviePicture> page_, playhead_; ///< of the row
};

} // namespace

std::unique_ptr<Scenery> sheet_scenery(const profile::Source& song, int width, int height) {
    return std::make_unique<Sheet>(song, width, height);
}

} // namespace luft::guide
