// How less of a recording is quoted.
#pragma once

#include "script/remedy.h"

namespace luft::script {

/// Less of the stretch that a `quote_too_long` warning is about. None where nothing can be left out without
/// losing a halt or an aside, and no phrase ends inside it.
std::optional<Remedy> shorten_quote(const Source& source, const CueSheet& sheet, const Warning& warning);

/// Less of the longest music: one step towards the set share. None where no music can be left out.
std::optional<Remedy> shorten_share(const Source& source, const CueSheet& sheet);

} // namespace luft::script
