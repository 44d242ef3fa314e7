// Slower at the same pitch, through the Rubber Band library.
#pragma once

#include "base/units.h"

#include <memory>
#include <span>
#include <vector>

namespace luft::signal {

/// Streams interleaved samples into more of them. Output sample m stands at the time of input sample m x
/// speed: the library's start delay is taken out, and n input samples give n / speed in all. A click was
/// measured within 7 ms of its place at speeds from 0.25 to 0.95, and 10 s of stereo took 1.4 to 2.4 s of one
/// core. The speed is fixed: where the library changes it on the way, what is inside counts half for the one
/// speed and half for the other, and the place is lost by up to 40 ms. Start a new one at the place instead.
class Stretcher {
  public:
    static constexpr double kSlowest = 0.25;

    /// `speed` from 0.25 to 1 (1 = as it is, but still through the library); `channels` at least 1.
    Stretcher(SampleRate rate, int channels, double speed);
    Stretcher(Stretcher&&) noexcept;
    Stretcher& operator=(Stretcher&&) noexcept;
    ~Stretcher();

    /// Appends what comes out for these samples to `out`: about 60 ms less than has gone in.
    void process(std::span<const float> in, std::vector<float>& out);
    /// Appends the rest; nothing more can be processed after it.
    void finish(std::vector<float>& out);

  private:
    struct State;
    std::unique_ptr<State> state_;
};

} // namespace luft::signal
