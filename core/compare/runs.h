// A path of columns, cut where one side has no counterpart.
#pragma once

#include "compare/levels.h"

#include <vector>

namespace luft::compare {

/// Shorter gaps are part of a way of singing (a longer breath, an added note) and are bridged; own value.
inline constexpr Seconds kLeastAlone{2};

/// Runs between gaps. A run under kLeastAlone between two gaps is chance and becomes part of the gap. Where
/// one side waits in silence for kLeastAlone and longer while the other goes on, the run is cut as well.
std::vector<Run> cut_into_runs(const std::vector<Cell>& path, const Columns& a, const Columns& b);

} // namespace luft::compare
