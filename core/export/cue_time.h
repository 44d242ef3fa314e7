// Exact programme times as text.
#pragma once

#include "script/cue_sheet.h"
#include "script/timecode.h"

#include <string>

namespace luft::exports {

/// Timecode of a programme time, counted as the sheet counts.
inline std::string programme_timecode(const script::CueSheet& sheet, Rational time) {
    return script::timecode((time * sheet.frame_rate).round(), sheet.frame_rate, sheet.drop_frame);
}

/// "1001/30000"; a whole number has no line.
inline std::string fraction(Rational r) {
    return r.den() == 1 ? std::to_string(r.num()) : std::to_string(r.num()) + "/" + std::to_string(r.den());
}

/// "29.97 frames a second, drop-frame".
std::string rate_words(const script::CueSheet& sheet);

} // namespace luft::exports
