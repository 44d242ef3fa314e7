// Invented tunes for voices that can't do all that ours can, and what is true about them.
#pragma once

#include "bench/groups.h"

namespace luft::bench {

struct TuneNote {
    int key = 60; ///< MIDI number
    Span span;    ///< as in the score
};

struct Tune {
    std::vector<TuneNote> notes;
    std::vector<Span> phrases;
};

/// The pitches and times of the invented song of that seed, moved by octaves into a range and, where that is
/// too small, folded back into it. Rests between phrases are at least 0.4 s long.
Tune tune_for(std::uint64_t seed, int lowest, int highest);

/// How a voice follows its score.
struct Following {
    double settles = 0.3,
           leaves = 0.75;  ///< its pitch is the note's from here to there, as shares of the note
    Seconds rings_on{0.1}; ///< after this time behind a phrase's end it is silent
};

/// Pitch (known only where the voice follows), notes, phrases, and that there are no breaths.
Truth truth_of(const Tune& tune, Seconds length, const Following& how);

/// Debian's festival sings it; keys from 45 to 62 are its own range. Throws Error(not_found) without it.
Scene sung_by_festival(const Tune& tune);

/// The soundfont's choir aahs (`choir`) or voice oohs sing it. The choir swells in. Throws as play_sampled.
Scene sung_by_samples(const Tune& tune, bool choir);

Group festival_group();
Group sampled_voice_group();

} // namespace luft::bench
