// Parts of a script in another order.
#pragma once

#include "script/cue_sheet.h"

#include <optional>

namespace luft::script {

/// An item as it would be between two neighbours in the script (null at either end). Openings and closings
/// change places among themselves. A stop halts at the phrase end between the two that is nearest to where it
/// halted, rather one that brings no warning; an aside is spoken in the nearest rest that it fits. None where
/// there is no such place. Its `position` is 0 where its time decides.
std::optional<project::ScriptItem> placed_between(const Source& source, const CueSheet& sheet,
                                                  const project::ScriptItem& item,
                                                  const project::ScriptItem* before,
                                                  const project::ScriptItem* after);

/// A stop's halt at the next phrase end, or the one before; none at the last or first.
std::optional<project::ScriptItem> at_neighbouring_phrase_end(const Source& source,
                                                              const project::ScriptItem& stop, bool later);

} // namespace luft::script
