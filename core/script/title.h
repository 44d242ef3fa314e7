// Short titles for the parts of a programme.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::script {

/// "Opening", "Closing", or "Stop 2: breathy onset": from the shades of the item's moment, else from the
/// first words of the text. One line; malformed UTF-8 replaced.
std::string title_of(const Source& source, const project::ScriptItem& item, int stop_number);

/// "Again", "Again at half speed", "Again at 70 % speed".
std::string replay_title(Rational speed);

/// "Compare: B (Mara Lindqvist)", "Compare at half speed: B (Mara Lindqvist)".
std::string quote_title(const project::Performance& other, Rational speed);

/// A text on one line: runs of white space and control characters become one space; as base/shown_text.h has
/// it; cut at a word's end with "…" when it is longer than `most` characters.
std::string one_line(const std::string& text, std::size_t most = 1000);

} // namespace luft::script
