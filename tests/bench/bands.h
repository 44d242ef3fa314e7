// Invented bands by seed: chords of the song's key, other instruments each time.
#pragma once

#include "bench/songs.h"
#include "singer/band.h"

#include <vector>

namespace luft::bench {

/// What a band plays to a song of that length, in the song's key and tuning. It differs by seed in
/// progression, tempo, harmony (plucked, struck, pad, or pad under one of them), bass, drums and where they
/// stand. Every other pair of seeds has a bowed
/// string that leads in `instrumental` stretches, near the middle and as loud as a voice. play() of
/// singer/band.h or play_sampled() make it sound.
std::vector<singer::Tone> arrange(const InventedSong& song, std::uint64_t seed, Seconds length,
                                  const std::vector<Span>& instrumental);

} // namespace luft::bench
