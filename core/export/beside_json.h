// Profiles side by side for other programs.
#pragma once

#include "profile/beside.h"

#include <string>

namespace luft::exports {

/// Schema "luftpause-beside/1": `columns` are the performances, in order; every row has one cell for each.
/// `stands` is 1 or -1 where the figure is beyond all others, else 0. What can't be had is null. Two-space
/// indent, ends with a line end.
std::string beside_json(const profile::Beside& beside);

} // namespace luft::exports
