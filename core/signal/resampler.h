// Change of sample rate, through libsoxr.
#pragma once

#include "base/units.h"

#include <memory>
#include <span>
#include <vector>

namespace luft::signal {

/// Streams one channel from one rate to another. The output is aligned: output sample m stands at the same
/// time as input sample m x from / to (libsoxr takes its own delay out).
class Resampler {
  public:
    Resampler(SampleRate from, SampleRate to); ///< throws Error(unsupported) for rates it can't do
    Resampler(Resampler&&) noexcept;
    Resampler& operator=(Resampler&&) noexcept;
    ~Resampler();

    /// Appends what comes out for these samples to `out`.
    void process(std::span<const float> in, std::vector<float>& out);
    /// Appends the rest; nothing more can be processed after it.
    void finish(std::vector<float>& out);

  private:
    struct State;
    std::unique_ptr<State> state_;
};

} // namespace luft::signal
