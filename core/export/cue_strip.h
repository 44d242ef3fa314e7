// The programme at a glance, as a picture.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// An inline SVG with its legend: the recording as solid bars, replays dotted, talk hatched with the stops'
/// numbers, asides as flags above. Empty for a programme without length.
std::string cue_strip(const script::CueSheet& sheet);

/// A round step in seconds that gives a ruler of this many seconds at most ten marks.
double ruler_step(double length);

/// A mark's time in minutes and seconds: "1:30".
std::string ruler_words(double seconds);

} // namespace luft::exports
