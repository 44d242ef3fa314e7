// Where decoded sound stands on the media time line.
#pragma once

#include "base/units.h"

#include <cstdint>
#include <optional>

namespace luft::media {

/// Decides for each frame of sound how much silence comes before it and how much of its start is cut, so that
/// sample n stands at time n / rate. All counts are samples of one channel.
///
/// - Stamps that differ from where the sound has got to by less than 5 ms, or 1.5 ticks of the container's
///   clock, are rounding and are ignored.
/// - A stamp that the next one gives the lie is ignored too: FFmpeg's are up to half a block off where Vorbis
///   changes its block size.
/// - A gap is filled. All gaps together may make 30 minutes; a longer leap is taken for a clock that was set
///   anew and is not filled: the sound goes on without a gap.
/// - An overlap of up to 10 s is cut; a longer leap back is likewise taken for a clock that was set anew.
/// The three limits are common practice, no source.
class Timeline {
  public:
    static constexpr Seconds kRounding{0.005};
    static constexpr Seconds kMostSilence{1800};
    static constexpr Seconds kMostOverlap{10};

    /// `tick` is one unit of the container's clock; `delay` is the encoder's delay if the container tells.
    Timeline(SampleRate rate, Seconds tick, std::int64_t delay = 0);

    struct Place {
        std::int64_t silence = 0;
        std::int64_t cut = 0;
    };
    /// Places `count` samples whose stamp says they start at sample `start` (none = right after the last);
    /// `following` is the stamp of those that come after them, none at the end.
    Place place(std::optional<std::int64_t> start, std::int64_t count, std::optional<std::int64_t> following);

    /// Sample that comes next.
    [[nodiscard]] std::int64_t next() const { return next_; }

    /// Goes on at this sample, where a seek has led; what was before is forgotten.
    void resume(std::int64_t sample);
    /// Up to this much off, a stamp is rounding.
    [[nodiscard]] std::int64_t rounding() const { return rounding_; }
    /// One unit of the container's clock.
    [[nodiscard]] std::int64_t tick() const { return tick_; }

  private:
    [[nodiscard]] std::int64_t snapped(std::int64_t start) const;
    [[nodiscard]] bool goes_on(std::optional<std::int64_t> following, std::int64_t count) const;

    std::int64_t tick_, rounding_, most_silence_, most_overlap_, delay_;
    std::int64_t next_ = 0;
    std::int64_t shift_ = 0;   ///< taken off every stamp after the clock was set anew
    std::int64_t silence_ = 0; ///< put in so far
    bool started_ = false;
};

} // namespace luft::media
