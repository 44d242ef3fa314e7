// Any number of channels to two.
#pragma once

#include "base/samples.h"

#include <span>
#include <vector>

namespace luft::signal {

/// Two channels stay as they are, one goes to both sides. Of more, centre and surrounds go in with 0.7071 as
/// ITU-R BS.775-3, annex 4, table 2 has it, the low-frequency channel is left out, and both sides are turned
/// down so far that nothing can clip.
class Stereo {
  public:
    explicit Stereo(const std::vector<ChannelRole>& channels);

    /// Appends the frames to `out`: left, right, left, right …
    void mix(std::span<const float> in, std::vector<float>& out) const;

  private:
    std::vector<float> left_, right_; ///< gain of each channel
};

} // namespace luft::signal
