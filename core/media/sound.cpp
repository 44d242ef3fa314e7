#include "media/sound.h"

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
        const AVCodecParameters& announced = *chosen.codecpar;
        duration_ = container->claimed_end(chosen);
        if (!duration_) duration_ = container->claimed_end();
        reader_.emplace(std::move(container), *stream);
        ahead_ = reader_->next();

        // The first frame knows better than the header: it may have been probed from a later part of the
        // file.
        const Layout layout = known_layout(ahead_ ? ahead_->ch_layout : announced.ch_layout, bytes_->name());
        const SampleRate rate =
            known_rate(ahead_ ? ahead_->sample_rate : announced.sample_rate, bytes_->name());
        format_ = {rate, roles(layout)};
        // Matroska tells the delay of some encoders; for AAC it is one block as a rule.
        const int delay = announced.initial_padding > 0 ? announced.initial_padding : announced.frame_size;
        timeline_.emplace(rate, Seconds(av_q2d(chosen.time_base)), delay);
        converter_.emplace(layout, rate);
        given_ = silence_ = 0;
        ready_ = {};
        any_ = ended_ = false;
    }

    /// Fills silence_ and ready_ from the next frame; false at the end.
    bool decode() {
        if (ended_) return false;
        const Frame frame = std::move(ahead_);
        if (!frame) {
            ended_ = true;
            if (!any_) throw nothing_decoded();
            put(std::nullopt, converter_->rest(), std::nullopt);
            return true;
        }
        any_ = true;
        ahead_ = reader_->next();
        const std::int64_t waiting = converter_->waiting();
        const auto start = sample_of(*frame, waiting);
        const auto following = ahead_ ? sample_of(*ahead_, waiting) : std::nullopt;
        put(start, converter_->convert(*frame), following);
        return true;
    }

    void put(std::optional<std::int64_t> start, std::span<const float> samples,
             std::optional<std::int64_t> following) {
        const auto count = static_cast<std::int64_t>(samples.size() / channels());
        if (count == 0) return;
        const Timeline::Place place = timeline_->place(start, count, following);
        silence_ = place.silence;
        ready_ = samples.subspan(static_cast<std::size_t>(place.cut) * channels());
    }

    /// Where a frame's stamp puts the first of the samples that the converter makes of it.
    [[nodiscard]] std::optional<std::int64_t> sample_of(const AVFrame& frame, std::int64_t waiting) const {
        const std::int64_t stamp = frame.best_effort_timestamp;
        const AVRational unit{1, format_.rate.per_second};
        if (!reader_->container().media_time(reader_->stream(), stamp)) return std::nullopt;
        const std::int64_t zero = av_rescale_q(reader_->container().origin(), {1, AV_TIME_BASE}, unit);
        return av_rescale_q(stamp, reader_->stream().time_base, unit) - zero - waiting;
    }

    [[nodiscard]] Error nothing_decoded() const {
        const std::string& damage = reader_->last_damage();
        return {Fault::unreadable, "'" + bytes_->name() + "' announces sound, but none of it can be decoded" +
                                       (damage.empty() ? "." : " (" + damage + ").")};
    }

    std::shared_ptr<ByteSource> bytes_;
    AudioFormat format_;
    std::optional<Seconds> duration_;
    std::optional<Timeline> timeline_;
    std::optional<SampleConverter> converter_;
    std::optional<FrameReader> reader_;
    Frame ahead_;                  ///< decoded, not yet placed: its stamp is evidence on the one before
    std::int64_t given_ = 0;       ///< samples handed out
    std::int64_t silence_ = 0;     ///< to hand out before ready_
    std::span<const float> ready_; ///< in the converter's buffer
    std::vector<float> zeros_;     ///< never anything else
    bool any_ = false;
    bool ended_ = false;
};

} // namespace

std::unique_ptr<SampleSource> sound_of(std::shared_ptr<ByteSource> bytes) {
    return std::make_unique<Sound>(std::move(bytes));
}

std::unique_ptr<SampleSource> open_sound(std::unique_ptr<ByteSource> bytes) {
    return sound_of(std::move(bytes));
}

} // namespace luft::media
