// How much is quoted, and how long at a stretch, against the set limits.
#pragma once

#include "script/cue_sheet.h"

namespace luft::script {

/// Adds the warnings about quotes too long and shares too large, the shares first. Needs the sheet's figures.
void warn_of_quotes(const Source& source, CueSheet& sheet);

} // namespace luft::script
