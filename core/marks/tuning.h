// To which A4 a performance is tuned.
#pragma once

#include "base/units.h"

#include <span>

namespace luft::marks {

struct HeldPitch {
    MidiPitch pitch; ///< against A4 = 440 Hz
    Seconds length;
};

/// The tuning under which the notes lie nearest to semitones: their circular mean offset, weighted by length
/// (mean direction, Fisher 1993, section 2.3.1). Within half a semitone of 440 Hz; exactly 440 Hz when the
/// notes don't agree on a tuning (mean resultant length under 0.2) or there are none.
Hertz find_tuning(std::span<const HeldPitch> notes);

} // namespace luft::marks
