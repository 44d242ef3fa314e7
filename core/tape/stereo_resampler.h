// Stereo at another rate.
#pragma once

#include "signal/resampler.h"

#include <span>
#include <vector>

namespace luft::tape {

/// As signal::Resampler, for interleaved stereo; hands samples on as they are where the rates agree.
class StereoResampler {
  public:
    /// Throws Error(unsupported) for rates it can't do.
    StereoResampler(SampleRate from, SampleRate to);

    /// Appends what comes out for these samples to `out`.
    void process(std::span<const float> stereo, std::vector<float>& out);
    /// Appends the rest; nothing more can be processed after it.
    void finish(std::vector<float>& out);

  private:
    std::vector<signal::Resampler> sides_; ///< none where the rates agree
};

} // namespace luft::tape
