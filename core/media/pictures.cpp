#include "base/error.h"
#include "media/frame_reader.h"
#include "media/media.h"
#include "media/movie_picture.h"
#include "media/picture_converter.h"
#include "media/picture_fitter.h"
#include "media/pixel_range.h"

#include <algorithm>
#include <optional>

namespace luft::media {
namespace {

// How far forward it is quicker to decode than to seek. Tuned by hand on H.264 with a key picture every 2 to
// 10 s.
constexpr Seconds kSmallStep{1};
constexpr Seconds kMostDecoded{30}; // even when the index knows no key picture on the way

/// Earlier than any picture: only the first one is shown.
constexpr Seconds kFirst{-1e9};

/// A frame with its time.
struct Shot {
    Frame frame;
    Seconds time;
    std::int64_t number = 0; ///< no two have the same
};

/// What a shot became for a movie: pictures that stand are made once.
struct Fitted {
    std::int64_t shot = 0;
    MoviePicture picture;
};

class Pictures final : public PictureSource {
  public:
    explicit Pictures(std::shared_ptr<ByteSource> bytes) : bytes_(std::move(bytes)) {
        open();
        converter_.emplace(turn_of(reader_->stream()));
        fitter_.emplace(turn_of(reader_->stream()));
    }

    Picture at(Seconds t, int most_width) override {
        const Shot& shot = show(t);
        return converter_->convert(*shot.frame, aspect(), shot.time, most_width);
    }

    MoviePicture movie_at(Seconds t, int width, int height) override {
        const Shot& shot = show(t);
        if (!fitted_ || fitted_->shot != shot.number || fitted_->picture.width() != width ||
            fitted_->picture.height() != height)
            fitted_ = {shot.number, fitter_->fit(*shot.frame, aspect(), width, height)};
        return fitted_->picture;
    }

    void show_in(ColourCode colours) override {
        fitter_->show_in(colours.matrix);
        fitted_.reset();
    }

    ColourCode colours() override {
        show(kFirst);
        const AVFrame& frame = *shown_->frame;
        if (is_rgb(frame)) return {}; // what PictureFitter makes of it
        return {frame.color_primaries, frame.color_trc, frame.colorspace};
    }

  private:
    /// Makes the picture that is on the screen at `t` the shown one.
    const Shot& show(Seconds t) {
        // Half a tick of the clock: a container that counts milliseconds may say 0.067 for 2/30.
        const Seconds due = t + Seconds(std::min(av_q2d(reader_->stream().time_base) / 2, 0.001) + 1e-6);
        if (!shown_) go_forward(kFirst);
        if (shown_ && due < shown_->time)
            go_back(due);
        else if (worth_seeking(due))
            go_to(due);
        go_forward(due);
        if (!shown_)
            throw Error(Fault::unreadable,
                        "'" + bytes_->name() +
                            "' announces pictures, but there is none in it that can be decoded" +
                            (reader_->last_damage().empty() ? "." : " (" + reader_->last_damage() + ")."));
        return *shown_;
    }

    /// Of the shown picture's pixels.
    [[nodiscard]] AVRational aspect() const {
        return av_guess_sample_aspect_ratio(&reader_->container().format(), &reader_->stream(),
                                            shown_->frame.get());
    }

    void open() {
        auto container = std::make_unique<Container>(bytes_);
        const std::optional<int> stream = container->picture_stream();
        if (!stream) throw Error(Fault::unreadable, "'" + bytes_->name() + "' has no moving picture.");
        reader_.emplace(std::move(container), *stream);
        forget();
        at_start_ = true;
    }

    void forget() {
        shown_.reset();
        ahead_.reset();
        last_.reset();
        at_start_ = false;
    }

    /// Decodes until the picture due is shown and the next one is at hand.
    void go_forward(Seconds due) {
        for (;;) {
            if (!ahead_) ahead_ = next();
            if (!ahead_) return;
            if (shown_ && ahead_->time > due) return;
            first_shown_ = !shown_ && at_start_;
            shown_ = std::move(ahead_);
            ahead_.reset();
        }
    }

    void go_back(Seconds due) {
        if (!first_shown_) go_to(due);
    }

    /// So that the next picture decoded is at or before the one due, or the first of all.
    void go_to(Seconds due) {
        // A seek may end too late: at a key picture whose place in the file, not whose time, comes before.
        for (const Seconds early : {Seconds(0), Seconds(2), Seconds(10)}) {
            forget();
            if (due - early <= Seconds(0) || !reader_->seek(stamp(due - early))) break;
            ahead_ = next();
            if (ahead_ && ahead_->time <= due) return;
        }
        open();
    }

    [[nodiscard]] bool worth_seeking(Seconds due) const {
        if (!last_ || due - *last_ <= kSmallStep) return false;
        AVStream& stream = reader_->stream();
        const int key = av_index_search_timestamp(&stream, stamp(due), AVSEEK_FLAG_BACKWARD);
        const AVIndexEntry* entry = key < 0 ? nullptr : avformat_index_get_entry(&stream, key);
        const std::optional<Seconds> key_time =
            entry == nullptr ? std::nullopt : reader_->container().media_time(stream, entry->timestamp);
        return !key_time || *key_time > *last_ || due - *last_ > kMostDecoded;
    }

    [[nodiscard]] std::int64_t stamp(Seconds t) const {
        const double clock = t.value() + static_cast<double>(reader_->container().origin()) / AV_TIME_BASE;
        constexpr double kMost = 1e15;
        return static_cast<std::int64_t>(
            std::clamp(clock / av_q2d(reader_->stream().time_base), -kMost, kMost));
    }

    std::optional<Shot> next() {
        Shot shot{reader_->next(), Seconds(0), ++decoded_};
        if (!shot.frame) return std::nullopt;
        const auto time =
            reader_->container().media_time(reader_->stream(), shot.frame->best_effort_timestamp);
        if (time)
            shot.time = *time;
        else if (last_)
            shot.time = *last_ + frame_length();
        last_ = shot.time;
        return shot;
    }

    /// For streams without times of their own.
    [[nodiscard]] Seconds frame_length() const {
        const AVRational rate =
            av_guess_frame_rate(&reader_->container().format(), &reader_->stream(), nullptr);
        constexpr double kUsual = 25;
        return Seconds(1 / (rate.num > 0 && rate.den > 0 ? av_q2d(rate) : kUsual));
    }

    std::shared_ptr<ByteSource> bytes_;
    std::optional<FrameReader> reader_;
    std::optional<PictureConverter> converter_;
    std::optional<PictureFitter> fitter_;
    std::optional<Fitted> fitted_;
    std::int64_t decoded_ = 0;
    std::optional<Shot> shown_;
    std::optional<Shot> ahead_;   ///< decoded, but later than shown_
    std::optional<Seconds> last_; ///< time of the last one decoded
    bool at_start_ = false;       ///< the reader hasn't been moved since it was opened
    bool first_shown_ = false;    ///< shown_ is the first picture of all
};

} // namespace

std::unique_ptr<PictureSource> open_pictures(std::unique_ptr<ByteSource> bytes) {
    return std::make_unique<Pictures>(std::move(bytes));
}

} // namespace luft::media
