// Breaths between the sung stretches.
#pragma once

#include "marks/marks.h"
#include "marks/segments.h"

#include <vector>

namespace luft::marks {

/// Breaths heard in the gaps between sung runs, before the first and after the last: noises without a pitch
/// that swell up under the level of the singing (marks/breath_events.h), judged by what breaths are like, and
/// then again by what the sure ones of this singer are like (marks/breath_manner.h). Confidence is that
/// probability. When the voice is accompanied, gaps of 0.25 s or more without a heard breath get an inferred
/// one before the next note.
std::vector<Breath> find_breaths(const voice::Hearing& hearing, const std::vector<Run>& runs);

} // namespace luft::marks
