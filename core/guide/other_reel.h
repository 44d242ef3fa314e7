// Another performance's recording, while a programme quotes it.
#pragma once

#include "guide/guide.h"
#include "guide/scenery.h"
#include "tape/stereo_tape.h"

#include <memory>

namespace luft::guide {

class OtherReel {
  public:
    /// Pictures come in that size and in the colours of the programme. Throws as media::open_playable_sound.
    OtherReel(const Quoted& quoted, int width, int height, media::ColourCode colours);

    [[nodiscard]] project::PerformanceId performance() const { return performance_; }
    [[nodiscard]] Scenery& scenery() { return *scenery_; }
    [[nodiscard]] tape::StereoTape& tape() { return tape_; }

  private:
    project::PerformanceId performance_;
    std::unique_ptr<profile::Source> song_; ///< where there is no picture; the scenery uses it
    std::unique_ptr<Scenery> scenery_;
    tape::StereoTape tape_;
};

} // namespace luft::guide
