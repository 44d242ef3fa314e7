// The song laid out in time: what sounds from when to when.
#pragma once

#include "singer/song.h"

#include <vector>

namespace luft::singer {

/// A note with its place. Times in seconds from the song's start.
struct PlacedNote {
    SungNote note;
    Span whole;          ///< with consonant, onset noise and offset noise
    Span voiced;         ///< while the voice sounds; joined notes meet at `whole`'s borders
    bool joined = false; ///< carries on from the note before it without a gap in the voice
    bool joins = false;  ///< the next one carries on from it
    bool cut = false;    ///< an unvoiced consonant of the same line ends it
    std::size_t phrase = 0;
};

struct PlacedBreath {
    Breath breath;
    Span span;
    bool inside_phrase = false;
};

struct Layout {
    std::vector<PlacedNote> notes;
    std::vector<PlacedBreath> breaths;
    std::vector<std::string> words; ///< of each phrase
    Seconds end;                    ///< of the last event
};

/// Throws Error(bad_request) when a length is negative.
Layout lay_out(const Song& song);

/// How onset and offset kinds take their time; shortened on notes that are too short for them. Design values
/// after check of rise times hard 10-30, balanced 30-90, breathy over 90 ms (10 to 90 %); no better source.
struct Manner {
    Seconds before{0}; ///< noise (breathy) or silence (glottal) ahead of the voice
    Seconds rise{0};   ///< raised cosine from nothing to full; 10 to 90 % is 0.59 of it
    Seconds fall{0};   ///< raised cosine to nothing
    Seconds after{0};  ///< noise after the voice
};
Manner manner_of(const SungNote& note, bool joined, bool joins, bool cut);

} // namespace luft::singer
