// Consonants inside a sung run.
#pragma once

#include "marks/segments.h"

#include <vector>

namespace luft::marks {

/// Where notes begin with a consonant that doesn't end the run, in frames from the run's beginning: the
/// middle of the spectrum (800 Hz to 4.5 kHz), in which nasals and closures make a hole, dips 9 dB under both
/// sides. Where the voice hums on through the dip (m, n, l) the note begins with the consonant, as it does
/// after silence; where the tone itself stops, it begins as it sets in again. Rows of three and more dips at
/// the pace of a vibrato are its own swing (own rules).
std::vector<std::size_t> consonants_within(const voice::Hearing& hearing, const Run& run);

} // namespace luft::marks
