// From one sound to another without a click.
#pragma once

#include "base/units.h"

#include <cstddef>
#include <span>
#include <vector>

namespace luft::desk {

/// How long it takes. Common practice, no source.
inline constexpr Seconds kFade{0.005};

/// Frames of a fade.
inline std::size_t fade_frames(SampleRate rate) {
    return static_cast<std::size_t>(kFade.value() * rate.per_second);
}

/// Stereo frames of the old sound, which go down over the new ones, linearly.
class Fade {
  public:
    Fade() = default;
    explicit Fade(std::vector<float> old) : old_(std::move(old)) {}

    /// Mixes what is left of the old sound over the next frames of the new.
    void over(std::span<float> next) {
        for (std::size_t i = 0; i < next.size() && at_ < old_.size(); ++i, ++at_) {
            const std::size_t frame = at_ / 2, frames = old_.size() / 2;
            const auto share = static_cast<float>(frame + 1) / static_cast<float>(frames + 1);
            next[i] = share * next[i] + (1 - share) * old_[at_];
        }
    }

  private:
    std::vector<float> old_;
    std::size_t at_ = 0;
};

} // namespace luft::desk
