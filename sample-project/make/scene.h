// What the video shows: somebody singing by the water, drawn.
#pragma once

#include "make/canvas.h"
#include "media/media.h"
#include "singer/truth.h"

namespace luft::sample {

/// Draws any moment of a performance: the mouth opens with the level of the voice, the shoulders rise with
/// each breath (silent and covered ones too: the eye sees what the ear may miss) and sink while it is spent,
/// and the line that is sung stands below, its sung syllables lit.
class Scene {
  public:
    Scene(const Performance& performance, const singer::Truth& truth);

    static constexpr int kWidth = 480, kHeight = 270;

    [[nodiscard]] media::Picture at(Seconds t) const;

  private:
    struct Pose {
        double mouth = 0;  ///< 0 closed to 1 wide
        double round = 0;  ///< 0 spread to 1 rounded
        double breath = 0; ///< 0 emptied to 1 full
        double sway = 0;   ///< -1 to 1
    };
    [[nodiscard]] Pose pose_at(Seconds t) const;
    void draw_land();
    void draw_singer(Canvas& canvas, const Pose& pose) const;
    void write_line(Canvas& canvas, Seconds t) const;

    Looks looks_;
    const singer::Truth& truth_;
    Canvas land_;
};

} // namespace luft::sample
