// Breaths between the sung stretches.
#pragma once

#include "marks/marks.h"
#include "marks/segments.h"

#include <vector>

namespace luft::marks {

/// Breaths heard in the gaps between sung runs, before the first and after the last: noise without a pitch
/// whose bulk lies under 3 kHz with weak peaks like those of a schwa (Werner et al. 2023), 0.1 to 1.3 s long,
/// well over the quiet of the place and under the singing, that swells up rather than only dying away (as
/// reverb does), with its edges where its level falls off (after Ruinskiy & Lavner 2007, who match a breath
/// template and then find its edges). [s] and [f] lie higher, hum and hiss don't swell. When the voice is
/// accompanied, gaps of 0.25 s or more without a heard breath get an inferred one before the next note.
std::vector<Breath> find_breaths(const voice::Hearing& hearing, const std::vector<Run>& runs);

} // namespace luft::marks
