// Two compared performances as plain text.
#pragma once

#include "compare/comparison.h"

#include <string>

namespace luft::exports {

/// Key, tempo, how far it can be trusted, what has no counterpart; then phrase against phrase; then what B
/// does otherwise, the whole first.
std::string compare_text(const compare::Comparison& comparison);

} // namespace luft::exports
