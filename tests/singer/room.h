// The room in which somebody sings, and the noise in it.
#pragma once

#include "base/units.h"

#include <cstdint>
#include <span>
#include <vector>

namespace luft::singer {

struct Room {
    Seconds decay{0.9};      ///< reverberation time: until 60 dB down
    Decibels wet{-14};       ///< level of the room's answer against the direct sound
    Seconds ahead{0.015};    ///< until the answer begins
    Decibels floor{-72};     ///< RMS of the noise floor, below full scale
    std::uint64_t seed = 11; ///< another seed, another place in the room: left and right take two of them
};

/// The sound in the room, of the same length. Schroeder 1962 (JAES 10, "Natural sounding artificial
/// reverberation"): parallel comb filters, each losing 60 dB in `decay`, then two all-passes; with a low-pass
/// in each loop, since high sounds die sooner (Moorer 1979, Computer Music J. 3(2)).
std::vector<float> in_room(std::span<const float> dry, SampleRate rate, const Room& room);

} // namespace luft::singer
