// The frame grid of a programme: every time in it is a whole number of frames.
#pragma once

#include "base/rational.h"
#include "base/units.h"
#include "project/model.h"

#include <cstdint>
#include <string_view>

namespace luft::script {

/// The programme's frame rate and the arithmetic on it. Frame counts are whole numbers and never rounded
/// twice, so that nothing drifts over an hour.
class Grid {
  public:
    /// Throws Error(bad_request) for a rate of 0 or less, or above 1000.
    explicit Grid(Rational frame_rate);

    [[nodiscard]] Rational rate() const { return rate_; }
    /// The exact time at which a frame starts.
    [[nodiscard]] Rational time(std::int64_t frame) const { return Rational(frame) / rate_; }
    /// The frame of an exact time that lies on the grid.
    [[nodiscard]] std::int64_t frame(Rational time) const { return (time * rate_).round(); }
    /// The frame nearest to a measured time. Throws Error(bad_request) for what isn't a time.
    [[nodiscard]] std::int64_t nearest(Seconds t) const;
    /// Whole frames that a length fits into: rounded up.
    [[nodiscard]] std::int64_t frames_for(Rational length) const { return (length * rate_).ceil(); }
    /// Whole frames in a recording of this length: a last frame that isn't complete is left out.
    [[nodiscard]] std::int64_t frames_in(Seconds duration) const;

  private:
    Rational rate_;
};

/// The rate that a programme runs at: the one that was set; else the video's, an odd average (a phone's
/// variable rate) brought to the trade's rate next to it if that lies within 1 %, else to a 1001st of a frame
/// a second; else 25.
Rational programme_rate(const project::ScriptSettings& settings, const project::MediaFacts& facts);

/// How long it takes to say a text, as exact seconds: its words at `words_per_minute`; 0 without a word.
/// Throws Error(bad_request) for a rate outside 20 to 600.
Rational time_to_say(std::string_view text, double words_per_minute);

/// A measured time as an exact fraction, to the microsecond. Throws Error(bad_request) for what isn't one.
Rational exact(Seconds t);

} // namespace luft::script
