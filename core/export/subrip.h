// The captions as SubRip (.srt).
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// The captions of webvtt() once more, for programs that read SubRip only. The format has no standard and no
/// escapes: a number, a line of times, lines of text, an empty line, each ended with CR LF. Where a text
/// holds something that readers take for a sign ("-->", "<" before a name, "{" before a command, a
/// backslash), an unseen word joiner (U+2060) stands in it, so that it is shown as it was written. UTF-8
/// without a byte order mark.
std::string subrip(const script::CueSheet& sheet);

} // namespace luft::exports
