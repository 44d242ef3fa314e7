// Where a room sings on after the singer has stopped.
#pragma once

#include "base/curve.h"
#include "voice/texture.h"

namespace luft::voice {

/// Takes reverberation out of the pitch line of a voice alone. Each sung stretch ends in a fall of level; a
/// singer's own release takes some 40 to 80 ms, a room falls by its reverberation time (60 dB in 0.4 to 2 s).
/// When the middle one of all falls is slower than 220 dB a second the recording is called reverberant, and
/// every fall is cut where the level is 8 dB under its top. Own rule, no source; a note that a singer lets
/// fade in such a room loses its end.
void cut_tails(Curve<Hertz>& f0, const Texture& texture);

} // namespace luft::voice
