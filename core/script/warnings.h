// What doesn't fit yet in a script, each in a sentence, with the nearest place where it would.
#pragma once

#include "script/cue_sheet.h"
#include "script/grid.h"

namespace luft::script {

/// Adds the warnings that need the whole layout: asides on singing, stops inside notes, stops too close,
/// quotes too long, shares too large; then puts all warnings into the programme's order, those on the whole
/// programme first.
///
/// Two stops at one and the same place are one halt with two talks, not 'too close'.
void warn(const Source& source, const Grid& grid, CueSheet& sheet);

Warning outside_warning(int stop_number, const project::ScriptItem& item, Seconds recording);
Warning skipped_warning(int stop_number, const project::ScriptItem& item);
Warning aside_not_played_warning(const project::ScriptItem& item);
/// `too_long` is what is missing; `by_aside` = the next aside starts, rather than a halt.
/// `other` is null when the project has no such performance.
Warning quote_outside_warning(int stop_number, const project::ScriptItem& item,
                              const project::Performance* other);
Warning cut_off_warning(const project::ScriptItem& item, Rational too_long, bool by_aside);

} // namespace luft::script
