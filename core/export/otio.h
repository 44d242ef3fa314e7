// The programme as an OpenTimelineIO timeline.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// JSON with the schemas Timeline.1, Stack.1, Track.1, Clip.1, Gap.1, ExternalReference.1 (MissingReference.1
/// for a recording that is carried in the project file), FreezeFrame.1, LinearTimeWarp.1, Marker.2,
/// TimeRange.1 and RationalTime.1, as the OpenTimelineIO project documents them. Every time is a whole number
/// of frames at the programme's rate; only how long another performance's recording is, which a quote is
/// taken from, is told at that recording's own rate.
///
/// A video track (none where no recording has a picture) and an audio track, each as long as the programme.
/// Halts are a frozen frame and, in the sound, a gap; slowed replays are clips with a time warp, whose
/// source range is as long as they take in the programme. Stops (red) and asides (yellow) are markers on the
/// stack of tracks, their words as the comment. What the schema has no field for (exact rate, drop-frame
/// counting, kind and number of a cue) stands under the metadata key "luftpause". Recordings are named as
/// the project names them: by a URL relative to the project file's folder. A quote of another performance is
/// a clip of that one's recording, with performer, source and permission in its metadata; without a picture
/// of its own it is a gap in the video.
std::string otio(const script::Source& source, const script::CueSheet& sheet);

} // namespace luft::exports
