// From one clock to another at the same pitch, through the Rubber Band library.
#pragma once

#include "base/units.h"

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace luft::signal {

/// A place in the input and where it is to stand in the output, in samples; both may have fractions.
struct Knot {
    double in = 0, out = 0;
};

/// Streams one channel so that what stands at a knot's `in` comes out at its `out`, straight lines between
/// the knots and on beyond the first and the last. Where Stretcher keeps one speed, this follows a clock that
/// changes at every note: the library works in frames, of which it is known where each stands in the input
/// and how many samples have come out before it; so before each frame the ratio is set that leads back to the
/// path within 20 ms. The library's own key-frame map sets ratios and doesn't look where that leads.
///
/// Measured in signal/follower_test.cpp: tone bursts whose tempo changes at each come out at their places,
/// 95 % within 12 ms where B is between half and twice as fast; slower than that, what the library does
/// before a beginning is stretched with it.
class Follower {
  public:
    /// Knots: two or more, rising on both sides. The first sample out stands at the output's place `from`.
    /// `pitch` is a factor on all frequencies, formants apart; 1 = as it is.
    Follower(SampleRate rate, std::vector<Knot> knots, double from, double pitch = 1);
    Follower(Follower&&) noexcept;
    Follower& operator=(Follower&&) noexcept;
    ~Follower();

    /// The first sample of the input that `process` is to be given: some 0.1 s before the one that comes out
    /// first. May lie before the input's start; then give it silence.
    [[nodiscard]] std::int64_t first() const;

    /// Appends what comes out for these samples to `out`. After the input's end give it silence for as long
    /// as more is wanted.
    void process(std::span<const float> in, std::vector<float>& out);

  private:
    struct State;
    std::unique_ptr<State> state_;
};

} // namespace luft::signal
