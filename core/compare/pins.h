// The coach's pins over what was found.
#pragma once

#include "compare/alignment.h"

#include <vector>

namespace luft::compare {

/// Takes out knots that a pin forbids: at its time on one side and at another time on the other.
void obey(std::vector<Stretch>& stretches, const std::vector<Pair>& pins);

/// Gives pins that lie where neither side has anything like the other a short stretch of their own, so that
/// the path goes through them all the same. `pins` in order; `end` is where both recordings end.
void add_lone_pins(std::vector<Stretch>& stretches, const std::vector<Pair>& pins, const Pair& end);

} // namespace luft::compare
