// The programme as an OpenTimelineIO timeline.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// JSON with the schemas Timeline.1, Stack.1, Track.1, Clip.1, Gap.1, ExternalReference.1 (MissingReference.1
/// for a recording that is carried in the project file), FreezeFrame.1, LinearTimeWarp.1, Marker.2,
/// TimeRange.1 and RationalTime.1, as the OpenTimelineIO project documents them. Every time is a whole number
/// of frames at the programme's rate.
///
/// A video track (none for a recording without a picture) and an audio track, each as long as the programme.
/// Halts are a frozen frame and, in the sound, a gap; slowed replays are clips with a time warp, whose
/// source range is as long as they take in the programme. Stops (red) and asides (yellow) are markers on the
/// stack of tracks, their words as the comment. What the schema has no field for (exact rate, drop-frame
/// counting, kind and number of a cue) stands under the metadata key "luftpause". The recording is named as
/// the project names it: a URL relative to the project file's folder.
std::string otio(const script::Source& source, const script::CueSheet& sheet);

} // namespace luft::exports
