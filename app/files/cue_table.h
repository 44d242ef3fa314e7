// The cue sheet for a terminal.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::files {

/// Programme time against media time, one part a line, with the words under it; then figures and warnings.
std::string cue_table(const script::Source& source, const script::CueSheet& sheet);

/// Running time, share quoted, longest quote: three lines, and one for each other performance that is quoted.
std::string cue_figures(const script::Source& source, const script::CueSheet& sheet);

} // namespace luft::files
