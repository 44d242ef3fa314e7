// Profiles side by side as plain text.
#pragma once

#include "profile/beside.h"

#include <string>

namespace luft::exports {

/// What stands out in each, then a table with a row for each figure and a column for each performance; a
/// figure that stands out has "+" or "-" after it. UTF-8, ends with a line end.
std::string beside_text(const profile::Beside& beside);

} // namespace luft::exports
