// The sung words, where it is known when they are sung.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// The line of the piece's words whose phrase began last before `t`, on one line of text. Empty when nothing
/// was sung yet, and when the words can't be told apart: only a piece with as many lines as the performance
/// has phrases (kept ones, and proposals that count) has its lines in place.
std::string sung_line_before(const script::Source& source, Seconds t);

} // namespace luft::exports
