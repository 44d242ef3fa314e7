// The cue sheet as a table for a spreadsheet.
#pragma once

#include "script/cue_sheet.h"

#include <string>

namespace luft::exports {

/// Comma-separated values by RFC 4180, UTF-8 without a byte-order mark, a header first; then one record a
/// segment and aside in the programme's order:
///
///     number,kind,programme_in,programme_out,programme_in_s,programme_out_s,
///     media_in_s,media_out_s,speed,title,text
///
/// and, where another performance is quoted, one more field: `performance`, whose recording it is, by label.
///
/// `number` counts from 1. `kind` is talk, play, quote, replay or aside. `programme_in` and `programme_out`
/// are timecode at the sheet's rate; seconds have six decimals. `speed` is empty where the picture stands.
/// Titles and texts that a spreadsheet would run as a formula get an apostrophe in front (see csv_words).
std::string cue_csv(const script::Source& source, const script::CueSheet& sheet);

} // namespace luft::exports
