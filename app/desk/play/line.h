// What is played, frame after frame, at the recording's own speed: from a place on, round a loop.
#pragma once

#include "desk/play/fade.h"
#include "media/media.h"
#include "signal/stereo.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace luft::desk {

/// Stereo frames, counted from 0 where it begins. A loop's end fades into its start over 5 ms and each round
/// lasts as long as the loop; what was asked for last can be had again for a second. A loop is read once and
/// then kept, so that its seams don't wait for a file that is slow to go back in.
class Line {
  public:
    /// Shorter loops are made this long, so that there is room for a fade at their ends.
    static constexpr Seconds kShortestLoop{0.05};

    /// Longer loops aren't kept: this is 46 MB at 48 kHz.
    static constexpr Seconds kLongestKept{120};

    /// Throws as PlayableSound. The sound must outlive the line.
    Line(media::PlayableSound& sound, Seconds from, std::optional<Span> loop);

    /// From the next frame that is read on. When that lies past the loop's end, its start comes next. Throws
    /// as PlayableSound.
    void set_loop(std::optional<Span> loop);

    /// Frames from `first` on, at most `count`: fewer at the end of the sound. Valid until the next call.
    /// Throws as PlayableSound::read.
    std::span<const float> at(std::int64_t first, std::size_t count);

    /// Media time of a frame, which may have a fraction.
    [[nodiscard]] Seconds media_at(double frame) const;
    /// First frame after this one that doesn't follow it in media time; none as far as is known.
    [[nodiscard]] std::optional<std::int64_t> seam_after(double frame) const;

  private:
    struct Piece {
        std::int64_t frame = 0;  ///< its first
        std::int64_t sample = 0; ///< where that stands in the sound
    };

    [[nodiscard]] std::int64_t end() const { return first_ + static_cast<std::int64_t>(held_.size() / 2); }
    void fill(std::int64_t until);
    std::size_t pull(std::size_t count, std::vector<float>& out);
    void turn_back();
    void enter_loop();
    void forget(std::int64_t before);

    media::PlayableSound& sound_;
    signal::Stereo stereo_;
    SampleRate rate_;
    std::optional<std::pair<std::int64_t, std::int64_t>> loop_; ///< in samples
    std::vector<Piece> pieces_;
    std::vector<float> held_; ///< from frame first_ on
    std::int64_t first_ = 0;
    std::int64_t sample_ = 0;  ///< of the sound, that comes next
    std::vector<float> ready_; ///< read, not yet in held_
    std::size_t used_ = 0;     ///< of ready_
    /// The loop's frames and those of the fade after it, once read from its start on.
    enum class Keep { nothing, writing, reading } keep_ = Keep::nothing;
    std::vector<float> kept_;
    std::size_t replayed_ = 0; ///< of kept_
    Fade fade_;
    bool ended_ = false;
};

} // namespace luft::desk
