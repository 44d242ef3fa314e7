// The text under a published programme: chapters, credits, cautions.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// Plain text: what it is, the chapters from 0:00 (as chapters_text), then piece, writer, performer, source
/// and permission, the same of each other performance that is quoted, then the cautions. What isn't noted is
/// said to be missing, so that it is settled before the text is published.
std::string description(const script::Source& source, const script::CueSheet& sheet);

} // namespace luft::exports
