// The song at a glance: every phrase one line, the sung pitch a ribbon.
#pragma once

#include "profile/profile.h"

#include <string>

namespace luft::exports {

struct PhraseMap {
    std::string html; ///< figure with legend; empty when nothing was sung
    int shown = 0;    ///< lines drawn
    int left_out = 0; ///< lines for which there was no room
};

/// All lines on one time scale. Height is pitch, thickness is level, filling is register (solid: chest or not
/// told, striped: head). Above the line the breaths (filled: heard, hollow: inferred) and the switches. A
/// long song is set in two columns, and cut off where two printed pages are full. Uses only marks that the
/// profile counts; without curves, notes are drawn as level bars.
PhraseMap phrase_map(const profile::Source& source);

} // namespace luft::exports
