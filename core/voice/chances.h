// From log odds to probabilities.
#pragma once

#include "base/curve.h"
#include "voice/pitch_track.h"

#include <span>

namespace luft::voice {

/// Sets the probabilities of `lattice` from log odds against 'nobody sings', one a candidate in the order of
/// `lattice.all()`; `towards_sung` is added to each. Returns by frame the probability that somebody sings.
Curve<Share> make_probabilities(std::span<const float> odds, double towards_sung, Lattice& lattice);

} // namespace luft::voice
