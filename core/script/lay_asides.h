// Asides, as they fall onto the programme.
#pragma once

#include "script/cue_sheet.h"
#include "script/grid.h"

#include <vector>

namespace luft::script {

/// Places each aside in the first play segment that contains its media time. One that runs into the next halt
/// or the next aside is cut off there, and one that no play segment contains is left out; both are reported
/// in the sheet's warnings. `items` are the asides in order of time.
void lay_asides(const Source& source, const Grid& grid, const std::vector<const project::ScriptItem*>& items,
                CueSheet& sheet);

/// How long an aside takes to say: rehearsed, or its words at the set rate; whole frames.
Rational aside_length(const Source& source, const Grid& grid, const project::ScriptItem& item);

/// Stretches of the recording that are played, nobody sings in, and no other aside takes.
std::vector<Span> free_for_aside(const Source& source, const CueSheet& sheet, project::ScriptItemId aside);

} // namespace luft::script
