// Whether a register switch is smooth or leaves a hole in the sound.
#pragma once

#include "marks/marks.h"
#include "voice/curves.h"

namespace luft::profile {

enum class Crossing {
    smooth,
    broken,  ///< the level drops out or the voice stops for a moment
    unknown, ///< on a leap (a consonant may make the hole), or without curves
};

/// Looks 80 ms either way for a dip of 8 dB under the level within 300 ms, or 40 ms without voice (tuned by
/// no set yet; no source).
Crossing crossing_of(const voice::Curves& curves, const marks::Switch& change);

} // namespace luft::profile
