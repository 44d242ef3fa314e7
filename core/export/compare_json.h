// Two compared performances for other programs.
#pragma once

#include "compare/comparison.h"

#include <string>

namespace luft::exports {

/// "luftpause-comparison/1": the alignment's knots, what has no counterpart, notes and phrases in pairs,
/// differences (sizes B minus A; `expected_error` in the same unit, or a probability where the unit is
/// empty). Two-space indent, ends with a line end.
std::string compare_json(const compare::Comparison& comparison);

} // namespace luft::exports
