// Where a room sings on after the singer has stopped.
#pragma once

#include "base/curve.h"
#include "voice/texture.h"

namespace luft::voice {

/// Takes reverberation out of the pitch line of a voice alone. Each sung stretch ends in a fall of level; a
/// singer's own release takes some 40 to 80 ms, a room falls by its reverberation time (60 dB in 0.4 to 2 s).
/// When the middle one of all falls is slower than 220 dB a second the recording is called reverberant.
/// There, a frame whose level under 1.2 kHz (where no hiss is) lies 7 dB under what a long room would hold of
/// the singing before it counts as tail, also between two notes: reverberation as exponential decay (as
/// Lebart et al. 2001, Acta Acustica 87, 359, subtract it). Constants tuned on 20 songs of the project's
/// singer in rooms of 0.7 to 2 s (seeds 1020 to 1029, 1040 to 1049). A note that a singer lets fade in such a
/// room loses its end.
void cut_tails(Curve<Hertz>& f0, const Texture& texture);

} // namespace luft::voice
