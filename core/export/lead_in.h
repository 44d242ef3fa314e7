// What is sung right before a place: the cue by which a speaker knows that it is their turn.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// At most this many words; what is heard in some three seconds (no source).
inline constexpr std::size_t kLeadInWords = 6;

/// The last words that begin before `t`, divided ones put together again; a hyphen at the end of one that is
/// sung on after `t`. Empty when nothing was sung yet or no words stand under the line.
std::string lead_in(const script::Source& source, Seconds t);

} // namespace luft::exports
