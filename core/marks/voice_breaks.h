// Where the voice breaks.
#pragma once

#include "voice/curves.h"

#include <vector>

namespace luft::marks {

/// Frames from `begin` to `end` (not included), of one note, in whose 40 ms to either side the voice breaks:
/// the level dips 4 dB under both sides, and the pitch is 40 cents off both in the same direction, or lost,
/// for under a tenth of a second. That goes with an uncovered change of register (Roubeau, Henrich &
/// Castellengo 2009: a jump of f0 and a weaker signal at the transition). Nearer than 90 ms to the note's
/// ends none is looked for. Both figures tuned on songs of the project's singer, seeds 1000 to 1023.
std::vector<bool> find_breaks(const voice::Curves& curves, std::size_t begin, std::size_t end);

} // namespace luft::marks
