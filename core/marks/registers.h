// Chest and head register, and where the voice changes between them.
#pragma once

#include "marks/marks.h"
#include "voice/curves.h"

#include <vector>

namespace luft::marks {

/// Two states fitted to this performance: notes are described by pitch, H1-H2, alpha ratio and cepstral peak;
/// a mixture of two Gaussians (expectation maximisation, Dempster et al. 1977) parts them. It counts as two
/// registers only when the parts stand clearly apart in the source measures (not in pitch alone), the one
/// with the greater H1-H2 and the weaker upper partials lying higher: that one is called head. Otherwise 'one
/// register'. In the octave that both registers share (about G3-G4, Roubeau et al. 2009) no single measure
/// tells; confidence says how far the evidence goes. Fills `head_register` of the curves and `sung_in` of the
/// notes. Returns false for one register.
bool find_registers(voice::Curves& curves, std::vector<Note>& notes);

/// A switch stands between two neighbouring notes of a phrase, or inside a note, where the register changes
/// for 0.12 s or more.
std::vector<Switch> find_switches(const voice::Curves& curves, const std::vector<Note>& notes,
                                  const std::vector<Phrase>& phrases);

} // namespace luft::marks
