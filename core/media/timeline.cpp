#include "media/timeline.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace luft::media {
namespace {

std::int64_t samples(Seconds t, SampleRate rate) {
    return std::llround(t.value() * rate.per_second);
}

} // namespace

Timeline::Timeline(SampleRate rate, Seconds tick, std::int64_t delay)
    : tick_(samples(tick, rate)), rounding_(std::max(samples(kRounding, rate), tick_ + tick_ / 2)),
      most_silence_(samples(kMostSilence, rate)), most_overlap_(samples(kMostOverlap, rate)), delay_(delay) {}

/// The first stamp to the sample, where a coarse clock (Matroska: 1 ms) has rounded it and the truth is
/// known.
std::int64_t Timeline::snapped(std::int64_t start) const {
    if (std::abs(start) <= tick_) return 0;
    if (std::abs(start + delay_) <= tick_) return -delay_;
    return start;
}

/// Whether the sound that comes after `count` samples follows on without a gap before them.
bool Timeline::goes_on(std::optional<std::int64_t> following, std::int64_t count) const {
    return started_ && following && std::abs(*following - shift_ - (next_ + count)) <= rounding_;
}

Timeline::Place Timeline::place(std::optional<std::int64_t> start, std::int64_t count,
                                std::optional<std::int64_t> following) {
    Place place;
    if (start && !goes_on(following, count)) {
        const std::int64_t at = started_ ? *start - shift_ : snapped(*start - shift_);
        const std::int64_t off = at - next_;
        const std::int64_t allowed = started_ ? rounding_ : 0;
        if (off > allowed && silence_ + off <= most_silence_) {
            place.silence = off;
            silence_ += off;
        } else if (off < -allowed && -off <= most_overlap_) {
            place.cut = std::min(count, -off);
        } else if (off > allowed || off < -allowed) {
            shift_ += off;
        }
    }
    next_ += place.silence + count - place.cut;
    // What lies before time 0 as a whole doesn't start the clock: the next frame may still be the first.
    started_ = started_ || place.cut < count;
    return place;
}

void Timeline::resume(std::int64_t sample) {
    next_ = sample;
    shift_ = silence_ = 0;
    started_ = true;
}

} // namespace luft::media
