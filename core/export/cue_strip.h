// The programme at a glance, as a picture.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// An inline SVG with its legend: the recording as solid bars, replays dotted, talk hatched with the stops'
/// numbers, asides as flags above. Empty for a programme without length.
std::string cue_strip(const script::CueSheet& sheet);

} // namespace luft::exports
