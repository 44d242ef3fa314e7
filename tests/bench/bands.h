// Invented bands by seed: chords of the song's key, other instruments each time.
#pragma once

#include "bench/songs.h"
#include "singer/band.h"

#include <vector>

namespace luft::bench {

/// A band for a song of that length, in the song's key and tuning. It differs by seed in progression, tempo,
/// harmony (plucked, struck, pad, or pad under one of them), bass, drums and where they stand. In
/// `instrumental` stretches a bowed string leads, near the middle and as loud as a voice.
singer::Stereo band_for(const InventedSong& song, std::uint64_t seed, Seconds length,
                        const std::vector<Span>& instrumental, SampleRate rate);

} // namespace luft::bench
