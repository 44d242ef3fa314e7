// What the phrase map draws, line by line, before anything is drawn.
#pragma once

#include "profile/profile.h"

#include <vector>

namespace luft::exports {

/// One line: a phrase, or the part of a long one that fits.
struct MapLine {
    Span span;
    bool goes_on = false; ///< the phrase is continued on the next line
    std::vector<const marks::Note*> notes;
    std::vector<const marks::Breath*> breaths; ///< in it, or between it and the next line
    std::vector<const marks::Switch*> switches;
    double low = 0, high = 0; ///< MIDI pitches of its notes, at the performance's own tuning
};

/// Lines in order of time; phrases where there are any, else stretches of notes between rests of a second.
std::vector<MapLine> map_lines(const profile::Source& source);

} // namespace luft::exports
