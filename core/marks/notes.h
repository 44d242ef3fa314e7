// The notes of a performance, each with everything it carries.
#pragma once

#include "marks/marks.h"
#include "marks/segments.h"

#include <vector>

namespace luft::marks {

/// Measures every note of `cut` (see cut_notes). Cents against the performance's tuning are filled in, the
/// register not yet (see registers.h).
std::vector<Note> measure_notes(const voice::Hearing& hearing, const std::vector<Run>& cut,
                                const std::vector<float>& pitch, Hertz tuning);

/// Median pitch of the steady part: the note without its first and last fifth.
MidiPitch steady_pitch(std::span<const float> pitch, const Run& note);

} // namespace luft::marks
