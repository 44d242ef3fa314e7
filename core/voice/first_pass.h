// The first pass over the samples: everything that doesn't need the pitch, and the candidates for it.
#pragma once

#include "base/progress.h"
#include "base/samples.h"
#include "voice/claims.h"
#include "voice/curves.h"
#include "voice/pitch_track.h"
#include "voice/texture.h"

#include <vector>

namespace luft::voice {

struct FirstPass {
    Seconds duration;
    Texture texture;
    Loudness loudness;
    Curve<Lufs> momentary;
    Lattice periodic;                ///< candidates by pYIN
    Lattice harmonic;                ///< candidates by harmonic salience
    std::vector<Claim> claims;       ///< of each of these candidates
    std::vector<float> aperiodicity; ///< by frame
    std::vector<float> side_ratio;   ///< side over middle power, by frame
};

FirstPass first_pass(SampleSource& source, const Progress& progress);

} // namespace luft::voice
