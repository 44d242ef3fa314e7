// The partials of the sung pitch in a frame.
#pragma once

#include "base/units.h"

#include <span>
#include <vector>

namespace luft::voice {

/// Levels of the partials of one pitch, dB below full scale (level of a sine: its mean square).
struct Partials {
    Hertz f0;
    std::vector<float> levels; ///< partial 1 first; up to 5 kHz, 40 at most
};

/// Reads them off a power spectrum (Spectrum::power or ::focus): the highest bin within half a bin and 1.5 %
/// of the partial's place, refined by a parabola through the decibels of three bins (Smith & Serra 1987).
/// `into` keeps its memory between frames.
void measure_partials(std::span<const float> power, Hertz f0, Partials& into);

/// Sum of the partials' powers as a level: the level of the voice itself.
Decibels level_of(const Partials& partials);

} // namespace luft::voice
