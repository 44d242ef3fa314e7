// How much louder open vowels come out, in this performance.
#pragma once

#include "marks/level_path.h"
#include "marks/marks.h"

#include <span>
#include <vector>

namespace luft::marks {

/// An open vowel is louder than a close one sung with the same effort: a higher first formant lifts the whole
/// spectrum over it (Fant 1960, Acoustic Theory of Speech Production, section 1.3). How much of that is in a
/// recording depends on singer and pitch, so it is measured: the slope of level over log2(F1) of notes within
/// the same phrase, both taken against their neighbours, by least squares drawn towards 0 (ridge) until there
/// are dozens of notes.
/// Between 0 and 12 dB for an octave of F1; 0 when fewer than 12 notes have formants.
Decibels level_per_octave_of_f1(std::span<const Note> notes);

/// Takes that out of the points of `notes`, against the notes' median F1. Notes without formants stay.
void even_out_vowels(std::vector<LevelPoint>& points, std::span<const Note> notes, Decibels per_octave);

} // namespace luft::marks
