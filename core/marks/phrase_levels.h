// Crescendo, decrescendo, swell: how the level of the voice goes through a phrase.
#pragma once

#include "base/curve.h"
#include "marks/marks.h"
#include "voice/curves.h"

#include <span>
#include <vector>

namespace luft::marks {

/// Shape and size of the level path of one phrase, out of its notes and the voice's own level curve (see
/// level_path.h). Thresholds as for notes (common practice, no source): it grows or fades by 4 dB and more
/// between the ends; swells when its highest point stands 3 dB over both; fluctuates when its notes scatter
/// by more than 4 dB about the path and nothing else shows. None under 1.2 s, or with
/// under 0.6 s of steady singing.
///
/// `per_octave`: see vowel_level.h. `note_error`: how far a note's level can be trusted, dB (standard
/// deviation). Confidence: the chance that the measured size lies on the right side of its threshold, from
/// scatter and note error as for a mean of that many notes.
std::optional<PhraseLevel> phrase_level(std::span<const Note> notes, const Curve<Decibels>& level,
                                        Decibels per_octave, Decibels note_error);

/// Fills in every phrase's level.
void measure_phrase_levels(std::vector<Phrase>& phrases, const std::vector<Note>& notes,
                           const Curve<Decibels>& level, voice::Setting setting);

/// The notes whose middle lies in the span; both in order of time.
std::span<const Note> notes_within(const std::vector<Note>& notes, Span span);

} // namespace luft::marks
