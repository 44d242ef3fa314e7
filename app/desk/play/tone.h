// The quiet reference tone beside the voice.
#pragma once

#include "base/units.h"

#include <functional>
#include <optional>
#include <span>

namespace luft::desk {

/// The pitch of the tone at a media time; none where there is to be none. Asked from the player's own thread,
/// about every 1.5 ms of what is played: it must be quick, and what it looks at must not change meanwhile.
using ToneAt = std::function<std::optional<Hertz>(Seconds media)>;

/// A plain tone of three partials that comes and goes within 10 ms and keeps its phase where its pitch
/// changes, so that nothing clicks. Where there was no pitch, the new one counts at once; else it is reached
/// within 1.5 ms.
class Tone {
  public:
    /// RMS, against full scale = 1: well under a voice at a usual level. Chosen by hand, no source.
    static constexpr Decibels kLevel{-26};

    explicit Tone(SampleRate rate) : rate_(rate) {}

    /// Adds the tone to stereo frames. The first one stands at `media` and each is `step` of media time after
    /// the one before. Without `at` the tone goes.
    void add(std::span<float> frames, const ToneAt* at, Seconds media, Seconds step);

  private:
    [[nodiscard]] float next();

    SampleRate rate_;
    double hertz_ = 0;    ///< of now
    double towards_ = 0;  ///< where the next step leads
    double phase_ = 0;    ///< in turns
    double strength_ = 0; ///< 0 to 1: coming and going
    bool on_ = false;
};

} // namespace luft::desk
