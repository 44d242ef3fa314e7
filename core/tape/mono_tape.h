// The recording's sound in one channel, at a rate of one's own, from any sample.
#pragma once

#include "signal/resampler.h"
#include "tape/stereo_tape.h"

#include <optional>

namespace luft::tape {

/// The mean of the two sides of a StereoTape.
class MonoTape {
  public:
    /// Sample m stands at media time m / rate. Throws Error(unsupported) for a rate it can't be brought to.
    MonoTape(std::unique_ptr<media::PlayableSound> sound, SampleRate rate);

    [[nodiscard]] SampleRate rate() const { return rate_; }

    /// As StereoTape::read.
    void read(std::int64_t from, std::span<float> mono);

  private:
    void go_to(std::int64_t sample);
    void pull();

    StereoTape tape_;
    SampleRate rate_;
    std::optional<signal::Resampler> resampler_; ///< none where the rates agree
    std::int64_t source_ = 0;                    ///< sample of the tape that is read next
    std::vector<float> ready_;                   ///< not handed out
    std::int64_t first_ = 0;                     ///< the sample that `ready_` begins with
};

} // namespace luft::tape
