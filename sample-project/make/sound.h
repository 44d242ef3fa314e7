// The sound of a performance: voice in a room, over the band.
#pragma once

#include "make/performances.h"
#include "singer/truth.h"

#include <vector>

namespace luft::sample {

inline constexpr SampleRate kRate{48000};

struct Sound {
    std::vector<float> samples;       ///< left and right interleaved, as written to the movie
    singer::Truth truth;              ///< levels as in the finished sound
    std::vector<Decibels> band_level; ///< RMS of the band while each breath is taken, dB below full scale
};

Sound sound_of(const Performance& performance);

} // namespace luft::sample
