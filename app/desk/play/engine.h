// Everything that is done to the sound on its way out, without threads and devices.
#pragma once

#include "desk/play/course.h"
#include "desk/play/fade.h"
#include "desk/play/line.h"
#include "desk/play/pace.h"
#include "desk/play/tone.h"

#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace luft::desk {

/// What the listener sets.
struct Settings {
    double speed = 1;                        ///< 0.25 to 1, at constant pitch
    double volume = 1;                       ///< factor on everything, 0 to 1
    std::shared_ptr<const ToneAt> tone = {}; ///< none: no reference tone
    std::optional<Span> loop = {};           ///< at least Line::kShortestLoop
};

/// At speed 1, volume 1 and without a tone the sound's samples come out unchanged (mixed to stereo).
class Engine {
  public:
    explicit Engine(std::unique_ptr<media::PlayableSound> sound);

    [[nodiscard]] SampleRate rate() const { return rate_; }

    /// From here on. Throws as PlayableSound.
    void begin(Seconds from, const Settings& settings);

    struct Chunk {
        std::span<const float> frames; ///< stereo, valid until the next call; none at the end
        std::vector<Stretch> course;   ///< where they stand; as many as there are frames
    };
    /// The next frames, at most `count`, at these settings. What changed is faded to. Throws as
    /// PlayableSound.
    [[nodiscard]] Chunk next(std::size_t count, const Settings& settings);

  private:
    void change_speed(double speed);
    void add_tone(const std::vector<Stretch>& course, const ToneAt* tone);
    void turn_volume(double to);

    std::unique_ptr<media::PlayableSound> sound_;
    SampleRate rate_;
    std::optional<Line> line_;
    std::optional<Pace> pace_;
    Fade fade_;
    Tone tone_;
    std::optional<Span> loop_;
    double volume_ = 1;
    std::vector<float> frames_;
};

} // namespace luft::desk
