// Phrases: what is sung on one breath, or between two rests.
#pragma once

#include "marks/marks.h"

#include <vector>

namespace luft::marks {

/// A phrase ends where the singing pauses for 0.28 s, or for 0.15 s with a breath in the pause (common
/// practice, no source). Marks breaths in pauses under 0.45 s as taken inside a phrase when a phrase of the
/// singer's usual length would go on there.
std::vector<Phrase> find_phrases(const std::vector<Note>& notes, std::vector<Breath>& breaths);

} // namespace luft::marks
