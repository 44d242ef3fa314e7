// The ear's front: any recording as centred frames of middle and side signal at one fixed rate.
#pragma once

#include "base/samples.h"
#include "signal/resampler.h"

#include <functional>
#include <span>
#include <vector>

namespace luft::voice {

/// Every measure works at this rate: 12 kHz of bandwidth hold all that a voice and a breath show, and 10 ms
/// are exactly 240 samples.
inline constexpr SampleRate kEarRate{24000};
inline constexpr int kHopSamples = 240;
/// Length of a frame: 85 ms, so that the partials of a 55 Hz tone stand apart under a Hann window.
inline constexpr int kFrameSamples = 2048;

/// One frame, centred at `index` x 10 ms; beyond the recording's ends it is silence.
struct Frame {
    FrameIndex index;
    std::span<const float> middle; ///< kFrameSamples; what both sides (and the centre channel) have in common
    std::span<const float>
        side; ///< kFrameSamples; half of left minus right; empty when there is one channel only
    std::span<const float> hop; ///< the kHopSamples of the middle signal from the centre on
};

/// Cuts a source into frames in one pass from time 0. Memory is one frame and one block.
class Front {
  public:
    explicit Front(SampleSource& source);

    /// Called with every native block as it is read, before it is cut into frames (loudness listens here).
    using Tap = std::function<void(const AudioBlock&)>;
    void on_block(Tap tap) { tap_ = std::move(tap); }

    /// The next frame; none at the end. The frame's samples are valid until the next call.
    [[nodiscard]] std::optional<Frame> next();

    /// Length of what was read; complete only after the last frame.
    [[nodiscard]] Seconds duration() const;

  private:
    bool
    fill(std::int64_t until); ///< reads until sample `until` is there; false when the recording ends before
    void take(const AudioBlock& block);

    SampleSource& source_;
    Tap tap_;
    bool stereo_ = false;
    signal::Resampler to_middle_, to_side_;
    std::vector<float> middle_, side_; ///< samples from `first_` on
    std::int64_t first_ = -kFrameSamples / 2;
    std::int64_t native_frames_ = 0;
    std::int64_t frame_ = 0;
    bool ended_ = false;
    std::vector<float> native_middle_, native_side_;
};

} // namespace luft::voice
