// How less of a recording is quoted.
#pragma once

#include "script/remedy.h"

namespace luft::script {

/// Ways to less of the stretch that a `quote_too_long` warning is about, the best first. None where nothing
/// can be left out without losing a halt or an aside, and no phrase ends inside it. The last way may be a
/// halt that still waits for its words, and shortens nothing until it has some.
std::vector<Remedy> shorten_quote(const Source& source, const CueSheet& sheet, const Warning& warning);

/// Ways to less music, the longest music first: steps towards the set share. `other` says whose, as in
/// Warning. None where no music can be left out.
std::vector<Remedy> shorten_share(const Source& source, const CueSheet& sheet,
                                  std::optional<project::PerformanceId> other);

} // namespace luft::script
