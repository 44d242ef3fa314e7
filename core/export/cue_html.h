// The cue sheet to print: what lies on the music stand while the commentary is recorded.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// One self-contained page for A4: the figures, the programme at a glance, what doesn't fit yet, then one row
/// a cue with programme time, time in the recording and the words, large; credits, permission and cautions at
/// the end. Texts may run in any direction; none can bring in markup.
std::string cue_html(const script::Source& source, const script::CueSheet& sheet);

} // namespace luft::exports
