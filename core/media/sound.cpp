#include "media/sound.h"

#include "base/error.h"
#include "media/frame_reader.h"
#include "media/landing.h"
#include "media/layout.h"
#include "media/media.h"
#include "media/quiet.h"
#include "media/sample_converter.h"
#include "media/timeline.h"

#include <algorithm>
#include <cmath>

namespace luft::media {
namespace {

constexpr std::int64_t kSilenceBlock = 16384; // samples of one channel handed out at a time

// How much is decoded before the place that a seek is for: enough for every codec to find its feet, and for
// the stamps to show where it is. Tried in turn when a seek comes down too late. Tuned by hand on the formats
// of tests/media.
constexpr Seconds kRunUps[]{Seconds(1), Seconds(5), Seconds(20)};
constexpr Seconds kSettled{0.2}; // before the place, the stamps have been judged

class Sound final : public PlayableSound {
  public:
    explicit Sound(std::shared_ptr<ByteSource> bytes) : bytes_(std::move(bytes)) { start(); }

    [[nodiscard]] const AudioFormat& format() const override { return format_; }
    [[nodiscard]] std::optional<Seconds> expected_duration() const override { return duration_; }
    void rewind() override { start(); }

    void go_to(std::int64_t sample) override {
        sample = std::max<std::int64_t>(sample, 0);
        for (const Seconds run_up : kRunUps)
            if (land(sample, run_up)) {
                from_ = sample;
                return;
            }
        start();
        from_ = sample;
    }

    std::optional<AudioBlock> read() override {
        while (auto block = next()) {
            const auto count = static_cast<std::int64_t>(block->samples.size() / channels());
            const std::int64_t cut = from_ - block->first;
            if (cut >= count) continue;
            if (cut > 0) {
                block->first = from_;
                block->samples = block->samples.subspan(static_cast<std::size_t>(cut) * channels());
            }
            return block;
        }
        return std::nullopt;
    }

  private:
    [[nodiscard]] std::size_t channels() const { return format_.channels.size(); }

    std::optional<AudioBlock> next() {
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
        if (given_ > static_cast<std::int64_t>(kMostLength.value()) * format_.rate.per_second)
            throw too_long(bytes_->name());
        return block;
    }

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
        layout_ = known_layout(ahead_ ? ahead_->ch_layout : announced.ch_layout, bytes_->name());
        const SampleRate rate =
            known_rate(ahead_ ? ahead_->sample_rate : announced.sample_rate, bytes_->name());
        format_ = {rate, roles(layout_)};
        // Matroska tells the delay of some encoders; for AAC it is one block as a rule.
        const int delay = announced.initial_padding > 0 ? announced.initial_padding : announced.frame_size;
        timeline_.emplace(rate, Seconds(av_q2d(chosen.time_base)), delay);
        converter_.emplace(layout_, rate);
        landing_ = {};
        given_ = silence_ = from_ = 0;
        ready_ = {};
        any_ = ended_ = moved_ = false;
    }

    /// Seeks to so long before the sample and decodes up to shortly before it; false when that isn't
    /// possible, and then the reader is of no more use.
    bool land(std::int64_t sample, Seconds run_up) {
        const Seconds to = Seconds(static_cast<double>(sample) / format_.rate.per_second) - run_up;
        if (to <= Seconds(0) || reader_->container().starts_anywhere()) return false;
        while (!moved_ && !landing_.knows_beginning() && decode()) {
        }
        if (!landing_.knows_beginning() || !seek(to)) return false;
        const auto settled_at = sample - std::llround(kSettled.value() * format_.rate.per_second);
        // The frame that is ahead must end before the place.
        while (ahead_ && timeline_->next() + 2 * ahead_->nb_samples < settled_at) {
            if (const auto at = sample_of(*ahead_, converter_->waiting()))
                landing_.see(*at - timeline_->next());
            decode();
        }
        const auto here = landing_.settled(timeline_->next(), timeline_->tick(), timeline_->rounding());
        if (!here || *here > sample) return false;
        timeline_->resume(*here);
        given_ = *here;
        silence_ = 0;
        ready_ = {};
        return true;
    }

    /// Moves the reader; the frame ahead is then the first one with a stamp.
    bool seek(Seconds to) {
        moved_ = true;
        ended_ = false;
        if (!reader_->seek(stamp(to)) && !reader_->seek(to)) return false;
        do
            ahead_ = reader_->next();
        while (ahead_ && !sample_of(*ahead_, 0));
        if (!ahead_) return false;
        converter_.emplace(layout_, format_.rate);
        timeline_->resume(*sample_of(*ahead_, 0));
        landing_.lift();
        return true;
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
        if (!moved_) landing_.begin(frame->nb_samples, timeline_->next());
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

    /// A media time on the stream's clock.
    [[nodiscard]] std::int64_t stamp(Seconds t) const {
        const auto clock = std::llround(t.value() * AV_TIME_BASE) + reader_->container().origin();
        return av_rescale_q(clock, {1, AV_TIME_BASE}, reader_->stream().time_base);
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
    Layout layout_;
    AudioFormat format_;
    std::optional<Seconds> duration_;
    std::optional<Timeline> timeline_;
    std::optional<SampleConverter> converter_;
    std::optional<FrameReader> reader_;
    Frame ahead_; ///< decoded, not yet placed: its stamp is evidence on the one before
    Landing landing_;
    std::int64_t from_ = 0;        ///< what lies before isn't handed out
    std::int64_t given_ = 0;       ///< samples handed out, or the place where a seek has led
    std::int64_t silence_ = 0;     ///< to hand out before ready_
    std::span<const float> ready_; ///< in the converter's buffer
    std::vector<float> zeros_;     ///< never anything else
    bool any_ = false;
    bool ended_ = false;
    bool moved_ = false; ///< a seek has been since the file was opened
};

} // namespace

std::unique_ptr<SampleSource> sound_of(std::shared_ptr<ByteSource> bytes) {
    return std::make_unique<Sound>(std::move(bytes));
}

std::unique_ptr<SampleSource> open_sound(std::unique_ptr<ByteSource> bytes) {
    return sound_of(std::move(bytes));
}

std::unique_ptr<PlayableSound> open_playable_sound(std::unique_ptr<ByteSource> bytes) {
    return std::make_unique<Sound>(std::move(bytes));
}

} // namespace luft::media
