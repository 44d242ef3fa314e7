// Singing a song.
#pragma once

#include "singer/truth.h"

#include <vector>

namespace luft::singer {

struct Rendition {
    SampleRate rate;
    std::vector<float> samples; ///< the voice alone, dry, mono, full scale = 1
    Truth truth;
};

/// Sings the song: the same samples for the same song, singer and rate (to the last bit with the same C math
/// library; a different one may differ in the last place of a float). Half a second of silence follows the
/// last event. Throws Error(bad_request) when the rate is below 16 kHz or a length is negative.
Rendition render(const Song& song, const Singer& singer, SampleRate rate);

} // namespace luft::singer
