// Which frames are sung at all.
#pragma once

#include "base/progress.h"
#include "voice/curves.h"
#include "voice/first_pass.h"

namespace luft::voice {

/// The probability, frame by frame, that somebody sings on a pitch, and the lattice with it worked in:
/// candidates that are too quiet to be the voice lose their probability.
struct Voicing {
    Curve<Share> probability;
    Lattice lattice;
};

/// Alone: pYIN's probability, freed of hum and hiss far under the singing (35 dB and more), and raised where
/// partials stand clear in a loud frame without one common period.
/// Accompanied: by how much each pitch looks like the singer's (likeness.h) and whether somebody sings there
/// at all (presence.h).
Voicing find_voicing(const FirstPass& pass, Setting setting, const Progress& progress = {});

} // namespace luft::voice
