// Chest and head register over a performance.
#pragma once

#include "marks/marks.h"
#include "voice/hear.h"

#include <vector>

namespace luft::marks {

/// Fits the two-state model (register_model.h) to the notes and finds the likeliest path through it by the
/// Viterbi algorithm: the register changes easily in a pause and where the voice breaks (voice_breaks.h),
/// less easily at a note's start, and only on strong evidence inside a note (with accompaniment hardly at all
/// there). What the sound of a note leaves open is decided by its pitch (passaggio.h). Fills `head_register`
/// of the curves and `sung_in` of the notes. Returns false, and leaves both empty, when the evidence doesn't
/// split: one register. In the octave that both registers share (about G3-G4, Roubeau et al. 2009) no single
/// measure tells; confidence says how far the evidence goes.
bool find_registers(voice::Hearing& hearing, std::vector<Note>& notes);

/// Takes back what find_registers said.
void forget_registers(voice::Curves& curves, std::vector<Note>& notes);

} // namespace luft::marks
