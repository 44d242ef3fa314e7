// Two compared performances as plain text.
#pragma once

#include "compare/comparison.h"

#include <string>

namespace luft::exports {

/// Key, tempo, what to speak of first; then phrase against phrase, with what isn't sure and what has no
/// counterpart; then all that B does otherwise, the whole first.
std::string compare_text(const compare::Comparison& comparison);

} // namespace luft::exports
