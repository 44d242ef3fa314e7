// The vowel of a note.
#pragma once

#include "marks/marks.h"
#include "marks/segments.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::marks {

/// Median formants over the middle of the note, where at least a third of its frames have them.
std::optional<Vowel> find_vowel(const voice::Curves& curves, const Run& note);

/// IPA sign of the vowel whose mean F1 and F2 (Hillenbrand et al. 1995, table V, men and women) lie nearest
/// on a logarithmic scale; empty when none lies within 25 %. Fixed F1 and F2 tell only about two vowels in
/// three right (68 % in that study), sung ones fewer: it's a hint.
std::string nearest_vowel(Hertz f1, Hertz f2);

/// Takes the formants out of notes over whose middle F1 or F2 spreads further than 0.15 octaves (20th to 80th
/// percentile). Meant for accompanied voices, where other instruments' partials pass for formants on half of
/// such notes; on steadier ones on one in five (songs of the project's singer, 12 dB over a band).
void withhold_unsteady_vowels(voice::Curves& curves, const std::vector<Run>& notes);

} // namespace luft::marks
