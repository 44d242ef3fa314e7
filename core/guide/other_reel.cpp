#include "guide/other_reel.h"

namespace luft::guide {

OtherReel::OtherReel(const Quoted& quoted, int width, int height, media::ColourCode colours)
    : performance_(quoted.performance), tape_(media::open_playable_sound(quoted.open_recording())) {
    if (media::probe(quoted.open_recording()).video) {
        scenery_ = video_scenery(quoted.open_recording(), width, height, colours);
    } else {
        song_ = std::make_unique<profile::Source>(quoted.song());
        scenery_ = sheet_scenery(*song_, width, height);
    }
}

} // namespace luft::guide
