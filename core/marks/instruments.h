// What an instrument played, taken for singing, in an accompanied recording.
#pragma once

#include "marks/segments.h"

#include <vector>

namespace luft::marks {

/// Takes the notes out that the band is likelier to have made than the singer:
/// - further than 12 dB under the voice's usual level (75th percentile by time): sung lines in a produced
///   recording seldom span more, and instruments heard through a rest lie there (common practice, no source);
/// - in a stretch of under a second that stands alone, and more than 6 dB under it;
/// - more than an octave off the median pitch of the 10 s around, and shorter than 0.4 s: the line slipped.
///
/// Returns what is left, in order. Does nothing where the voice is alone.
std::vector<Run> leave_out_instruments(const voice::Hearing& hearing, const std::vector<float>& pitch,
                                       std::vector<Run> notes);

/// The sung stretches that notes form: neighbours without a gap in one.
std::vector<Run> runs_of(const std::vector<Run>& notes);

/// Takes the pitch out of every frame that isn't in a note, and with it what was measured on it.
void keep_only(voice::Curves& curves, const std::vector<Run>& notes);

} // namespace luft::marks
