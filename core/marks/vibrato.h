// Vibrato of a note.
#pragma once

#include "marks/marks.h"

#include <optional>
#include <span>

namespace luft::marks {

/// Finds the regular swing in a note's pitch (MIDI numbers, one value every 10 ms). Method: the pitch freed
/// of its slow drift (running mean over one cycle) is compared with sines of 3.5 to 9 Hz by least squares
/// (periodogram of Lomb 1976); the rate that explains most is taken, extent = the amplitude that a sine of
/// the same power has, regularity = share of the swing that the sine explains. There is vibrato when at least
/// 2 cycles fit, the extent is 20 cents or more and the regularity 0.45 or more (common practice, no source).
/// Extent is half the whole swing.
std::optional<Vibrato> find_vibrato(std::span<const float> pitch);

} // namespace luft::marks
