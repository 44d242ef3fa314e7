// Programme time in whole frames and whole samples.
#pragma once

#include "base/rational.h"
#include "base/units.h"

#include <cstdint>

namespace luft::guide {

/// Each count is rounded once, from an exact time.
class Clock {
  public:
    Clock(Rational frame_rate, SampleRate sample_rate)
        : frame_rate_(frame_rate), sample_rate_(sample_rate.per_second) {}

    [[nodiscard]] Rational frame_rate() const { return frame_rate_; }
    [[nodiscard]] SampleRate sample_rate() const { return {static_cast<int>(sample_rate_.num())}; }

    [[nodiscard]] std::int64_t frame(Rational time) const { return (time * frame_rate_).round(); }
    [[nodiscard]] std::int64_t sample(Rational time) const { return (time * sample_rate_).round(); }
    /// The first sample of a frame.
    [[nodiscard]] std::int64_t sample_of_frame(std::int64_t frame) const {
        return sample(Rational(frame) / frame_rate_);
    }
    [[nodiscard]] std::int64_t samples_in(Seconds length) const {
        return nearest_rational(length.value() * sample_rate_.as_double(), 1).num();
    }

  private:
    Rational frame_rate_, sample_rate_;
};

} // namespace luft::guide
