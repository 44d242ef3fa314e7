// Two aligned performances for a person and for other programs.
#pragma once

#include "cli/json_text.h"
#include "files/compared.h"

#include <string>

namespace luft::cli {

/// Key, tempo, how far it can be trusted, what has no counterpart; then phrase against phrase; then what B
/// does otherwise, the whole first.
std::string compared_text(const files::Compared& compared);

/// "luftpause-comparison/1": the alignment's knots, what has no counterpart, notes and phrases in pairs,
/// differences (sizes B minus A; `expected_error` in the same unit, or a probability where the unit is
/// empty).
Json compared_value(const files::Compared& compared);

} // namespace luft::cli
