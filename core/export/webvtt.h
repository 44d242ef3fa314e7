// Captions as WebVTT.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// Captions of what is spoken, in programme time, by the W3C's WebVTT: UTF-8, numbered cues, times to the
/// millisecond, '&', '<' and '>' escaped, so that no text can end a cue or begin another. Line ends are LF.
std::string webvtt(const script::CueSheet& sheet);

} // namespace luft::exports
