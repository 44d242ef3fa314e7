// From the cue sheet's exact times to those of a clock.
#pragma once

#include "script/cue_sheet.h"

namespace luft::desk {

inline Seconds seconds(Rational exact) {
    return Seconds(exact.as_double());
}

/// How long it takes in the programme.
inline Seconds length(const script::Segment& s) {
    return seconds(s.programme_end - s.programme_start);
}

} // namespace luft::desk
