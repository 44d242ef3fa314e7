// The words to speak, large, one stop a block: a page to read from while recording.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// Every talk and aside of the programme in order, each in a block of its own: its number, what is heard
/// before it (how long, up to where, and the words that are sung last), its words, and how long they take.
/// Light on dark or dark on light as the reader's screen is set. As `page`: no script, no other file.
std::string teleprompter(const script::Source& source, const script::CueSheet& sheet);

} // namespace luft::exports
