// Lengths of the cue sheet's parts.
#pragma once

#include "script/cue_sheet.h"

namespace luft::desk {

/// How long it takes in the programme.
inline Seconds length(const script::Segment& s) {
    return seconds(s.programme_end - s.programme_start);
}

} // namespace luft::desk
