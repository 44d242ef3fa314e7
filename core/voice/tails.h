// Where a room sings on after the singer has stopped.
#pragma once

#include "base/curve.h"
#include "voice/texture.h"

namespace luft::voice {

/// Takes reverberation out of the pitch line of a voice alone. The level under 1.2 kHz, where no hiss is, is
/// compared with a memory of the sound before that fades by 60 dB in 2.5 s, as a large room would. A singer's
/// own tone goes from 7 to 20 dB under that memory in 10 to 40 ms, a room of 0.7 s and more takes 100 ms and
/// more; when the middle one of all falls takes more than 85 ms the recording is called reverberant. There, a
/// frame 7 dB or more under the memory counts as tail, also between two notes: reverberation as exponential
/// decay (as Lebart et al. 2001, Acta Acustica 87, 359, take it). Constants tuned on 150 songs of the
/// project's singer, 60 of them in rooms of 0.7 to 2 s (seeds 1000 to 1049, 1500 to 1599). A note that a
/// singer lets fade in such a room loses its end.
void cut_tails(Curve<Hertz>& f0, const Texture& texture);

} // namespace luft::voice
