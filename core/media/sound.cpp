#include "base/error.h"
#include "media/frame_reader.h"
#include "media/layout.h"
#include "media/media.h"
#include "media/quiet.h"
#include "media/sample_converter.h"
#include "media/timeline.h"

#include <algorithm>

namespace luft::media {
namespace {

constexpr std::int64_t kSilenceBlock = 16384; // samples of one channel handed out at a time
constexpr std::int64_t kAbsurdSample = std::int64_t{1} << 50;

class Sound final : public SampleSource {
  public:
    explicit Sound(std::shared_ptr<ByteSource> bytes) : bytes_(std::move(bytes)) { start(); }

    [[nodiscard]] const AudioFormat& format() const override { return format_; }
    [[nodiscard]] std::optional<Seconds> expected_duration() const override { return duration_; }
    void rewind() override { start(); }

    std::optional<AudioBlock> read() override {
        while (silence_ == 0 && ready_.empty())
            if (!decode()) return std::nullopt;
        AudioBlock block{given_, {}};
        std::int64_t count = 0;
        if (silence_ > 0) {
            count = std::min(silence_, kSilenceBlock);
            zeros_.resize(static_cast<std::size_t>(count) * channels());
            block.samples = zeros_;
            silence_ -= count;
        } else {
            block.samples = ready_;
            count = static_cast<std::int64_t>(ready_.size() / channels());
            ready_ = {};
        }
        given_ += count;
        return block;
    }

  private:
    [[nodiscard]] std::size_t channels() const { return format_.channels.size(); }

    /// Opens the file anew: for many formats seeking to the start isn't exact to the sample.
    void start() {
        auto container = std::make_unique<Container>(bytes_);
        const std::optional<int> stream = container->sound_stream();
        if (!stream) throw Error(Fault::unreadable, "'" + bytes_->name() + "' has pictures but no sound.");
        const AVStream& chosen = container->stream(*stream);
        const Layout layout = known_layout(chosen.codecpar->ch_layout, bytes_->name());
        const SampleRate rate = known_rate(chosen.codecpar->sample_rate, bytes_->name());
        format_ = {rate, roles(layout)};
        duration_ = container->claimed_end(chosen);
        if (!duration_) duration_ = container->claimed_end();
        timeline_.emplace(rate, Seconds(av_q2d(chosen.time_base)), chosen.codecpar->initial_padding);
        converter_.emplace(layout, rate);
        reader_.emplace(std::move(container), *stream);
        given_ = silence_ = 0;
        ready_ = {};
        any_ = ended_ = false;
    }

    /// Fills silence_ and ready_ from the next frame; false at the end.
    bool decode() {
        if (ended_) return false;
        AVFrame* frame = reader_->next();
        if (frame == nullptr) {
            ended_ = true;
            if (!any_)
                throw Error(
                    Fault::unreadable,
                    "'" + bytes_->name() + "' announces sound, but there is none in it that can be decoded" +
                        (reader_->last_damage().empty() ? "." : " (" + reader_->last_damage() + ")."));
            put(std::nullopt, converter_->rest());
            return true;
        }
        any_ = true;
        const std::int64_t late = converter_->waiting();
        std::optional<std::int64_t> at = sample_of(frame->best_effort_timestamp);
        if (at) *at -= late;
        put(at, converter_->convert(*frame));
        return true;
    }

    void put(std::optional<std::int64_t> at, std::span<const float> samples) {
        const auto count = static_cast<std::int64_t>(samples.size() / channels());
        if (count == 0) return;
        const Timeline::Place place = timeline_->place(at, count);
        silence_ = place.silence;
        ready_ = samples.subspan(static_cast<std::size_t>(place.cut) * channels());
    }

    [[nodiscard]] std::optional<std::int64_t> sample_of(std::int64_t stamp) const {
        if (stamp == AV_NOPTS_VALUE) return std::nullopt;
        const AVRational unit{1, format_.rate.per_second};
        const std::int64_t at = av_rescale_q(stamp, reader_->stream().time_base, unit);
        const std::int64_t zero = av_rescale_q(reader_->container().origin(), {1, AV_TIME_BASE}, unit);
        if (std::abs(at / 2) > kAbsurdSample) return std::nullopt;
        return at - zero;
    }

    std::shared_ptr<ByteSource> bytes_;
    AudioFormat format_;
    std::optional<Seconds> duration_;
    std::optional<Timeline> timeline_;
    std::optional<SampleConverter> converter_;
    std::optional<FrameReader> reader_;
    std::int64_t given_ = 0;       ///< samples handed out
    std::int64_t silence_ = 0;     ///< to hand out before ready_
    std::span<const float> ready_; ///< in the converter's buffer
    std::vector<float> zeros_;     ///< never anything else
    bool any_ = false;
    bool ended_ = false;
};

} // namespace

std::unique_ptr<SampleSource> open_sound(std::unique_ptr<ByteSource> bytes) {
    return std::make_unique<Sound>(std::move(bytes));
}

} // namespace luft::media
