// How the voice is steered: every quantity of source and tract, every millisecond.
#pragma once

#include "singer/layout.h"
#include "singer/random.h"

#include <vector>

namespace luft::singer {

struct Control {
    double pitch = 60;  ///< fractional MIDI number against A4 = 440 Hz
    double voicing = 0; ///< envelope of onset and offset, 0 to 1
    double voice = 0;   ///< factor on the glottal flow
    double noise = 0;   ///< factor on breath noise made at the glottis
    double rd = 1;
    double jitter = 0;
    double shimmer = 0;
    double head = 0; ///< 0 chest, 1 head
    Formants formants{};
};

inline constexpr Seconds kControlStep{0.001};

/// The controls of the whole song, from time 0 to `length`.
std::vector<Control> steer(const Layout& layout, const Singer& singer, SampleRate rate, Seconds length,
                           Random random);

} // namespace luft::singer
