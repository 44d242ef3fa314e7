// A first script from the kept moments, in plain words with the evidence in them.
#pragma once

#include "script/cue_sheet.h"

#include <vector>

namespace luft::script {

/// Opening, one stop or aside a kept moment in order of time, closing. Stored items of `source` that are in
/// the coach's own words come through untouched (text, place and settings); others are worded anew; moments
/// without an item get one; items whose moment is gone are left out. A moment that is compared with another
/// performance (Moment::beside) is always a stop, which quotes it before the replay; a stop that is there
/// already keeps what was set, with or without a quote, and its words lead to what it quotes. The opening
/// names whom the stops quote, those in own words too. Deterministic: the same source gives the same words.
std::vector<project::ScriptItem> draft(const Source& source);

} // namespace luft::script
