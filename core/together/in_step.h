// Two performances heard together: one on the left, the other on the right, in step.
//
// A layer of its own, since it needs media and compare together: the window plays it without the guide and
// its pictures, and the guide knows nothing of two performances.
#pragma once

#include "compare/alignment.h"
#include "media/media.h"
#include "signal/stereo.h"
#include "together/brought.h"

#include <memory>
#include <optional>
#include <vector>

namespace luft::together {

struct Recording {
    std::unique_ptr<media::PlayableSound> sound;
    std::optional<Lufs> loudness; ///< integrated, of the whole recording, ITU-R BS.1770; as heard by the ear
};

/// What each side is multiplied by, at most 1: where both loudnesses are known, the louder one is turned down
/// to the other, so that nothing is lifted above full scale. A recording of two channels and more counts as 3
/// LU softer, which is what a voice in the middle loses when both channels become one side.
struct Gains {
    float a = 1, b = 1;
};
Gains even_out(const Recording& a, const Recording& b);

/// Left is A in one channel, sample for sample at its own time and rate; right is B in one channel, brought
/// onto A's time by the alignment (see brought.h). It lasts as long as A. Where A has no counterpart the
/// right is silent; what only B has is left out. Each is at its own pitch, unless B is transposed.
///
/// For other speeds put it through signal::Stretcher, which keeps the two sides together.
class InStep final : public media::PlayableSound {
  public:
    /// `transposed`: B onto A's key and tuning, voice and vowels as they are. Throws Error(unsupported) where
    /// B can't be brought to A's rate.
    InStep(Recording a, Recording b, const compare::Alignment& alignment, bool transposed);

    [[nodiscard]] const AudioFormat& format() const override { return format_; }
    [[nodiscard]] std::optional<AudioBlock> read() override;
    void rewind() override { go_to(0); }
    [[nodiscard]] std::optional<Seconds> expected_duration() const override {
        return a_->expected_duration();
    }
    void go_to(std::int64_t sample) override;

  private:
    Gains gains_;
    std::unique_ptr<media::PlayableSound> a_;
    Brought b_;
    signal::Stereo stereo_;
    AudioFormat format_;
    std::vector<float> frames_, right_;
};

} // namespace luft::together
