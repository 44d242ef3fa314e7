// How much a pitch among instruments looks like the singer's.
#pragma once

#include "voice/claims.h"
#include "voice/pitch_track.h"

#include <span>
#include <vector>

namespace luft::voice {

/// Log odds against 'nobody sings', one a candidate in the order of Lattice::all(). Pitch contours told apart
/// by their features with logistic weights (after Salamon & Gomez 2012, section II.C, and Bittner, Salamon,
/// Essid, Bello 2015; here a conditional logit, McFadden 1974: the candidates of a frame and 'nobody'
/// compete). Features are means over the contour within 0.25 s to either side:
/// - salience against the frame's strongest;
/// - level of the partials against the recording's loud frames, also in the frame itself;
/// - what stands between the partials, the sub-octave's sign and the odd partials (claims.h);
/// - how much the pitch moves: instruments hold theirs, voices don't;
/// - the pitch itself.
/// Weights trained on 72 scenes of the project's own singer over bands, at +6, +3 and 0 dB, stereo and mono,
/// with timbre, room and tuning by chance.
/// `lattice`: saliences; `claims`: one a candidate.
std::vector<float> voice_likeness(const Lattice& lattice, std::span<const Claim> claims);

} // namespace luft::voice
