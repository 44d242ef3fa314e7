// The programme as an edit decision list in the CMX 3600 layout.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// TITLE, FCM, then numbered events: number, reel, track, cut, source in and out, record in and out. All
/// times are timecode at the programme's rate, out points exclusive; source time 0 is the recording's first
/// frame, record time 0 the programme's. On every track the events follow each other without a gap from 0 to
/// the running time.
///
/// Each performance is a reel of its own, named by its label. Played and replayed: the recording on sound and
/// picture; so is what is quoted of another performance, which counts from that recording's first frame; what
/// is slowed has an M2 line with its speed in frames a second. Halts: the picture as an M2 line of speed 0 on
/// the frame that stands, the sound as black (BL), as is the picture where only another recording has one.
/// Stops and asides are "* LOC:" comments at their record time. The layout has one decimal for a speed and no
/// place for half frames: source and record times are what counts.
///
/// Events from 1000 on take four digits, which the layout's first machines could not read.
std::string edl(const script::Source& source, const script::CueSheet& sheet);

} // namespace luft::exports
