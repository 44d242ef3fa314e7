// Runs of corners -> the straight pieces of an alignment.
#pragma once

#include "compare/levels.h"

#include <vector>

namespace luft::compare {

/// Fills in stretches and what is alone. Knots are the marks that the path nearly goes through on both sides
/// (note begins, lines end), the pins, and the path itself every 2 s where there are no marks.
void lay_path(Alignment& out, const std::vector<Run>& runs, const Side& a, const Side& b,
              const std::vector<Pair>& pins);

} // namespace luft::compare
