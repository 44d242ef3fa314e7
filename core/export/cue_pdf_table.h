// The printed cue sheet's table: a row for each segment and aside.
#pragma once

#include "export/paper_page.h"
#include "script/cue_sheet.h"

namespace luft::exports {

/// Left edge of the column of media times, in points.
inline constexpr double kCueMediaColumn = 84;

/// Adds the table, whose head stands again on every page. A talk of up to some twelve lines is never torn
/// apart. `sheet` and `print` must outlive the flow.
void add_cue_table(sheet::Flow& flow, const Print& print, const script::Source& source,
                   const script::CueSheet& sheet);

} // namespace luft::exports
