// Phrase to phrase and note to note.
#pragma once

#include "compare/alignment.h"

#include <vector>

namespace luft::compare {

struct NotePair {
    std::size_t a = 0, b = 0; ///< indices of Side::notes
    Cents apart;              ///< B's pitch minus A's, key and tuning taken out: 0 when they sing the same
    bool operator==(const NotePair&) const = default;
};

/// Phrases that hold each other's notes: one to one, one to two (B breathes in the middle), two to one.
struct PhrasePair {
    std::vector<std::size_t> a, b; ///< indices of Side::phrases; neither is empty
};

struct Counterparts {
    std::vector<NotePair> notes; ///< in order of time on both sides; every note at most once
    std::vector<PhrasePair> phrases;
    std::vector<std::size_t> phrases_only_a, phrases_only_b; ///< without counterpart
    /// Notes without counterpart inside a phrase that has one: the other performance does without them.
    std::vector<std::size_t> added_by_a, added_by_b;
    /// Notes without counterpart elsewhere: in a stretch or a phrase that the other doesn't have; also bits
    /// that join a paired note an octave away, which is where an ear slips and nobody sings.
    std::vector<std::size_t> notes_only_a, notes_only_b;
};

/// Notes are paired in order so that pitch (octaves apart count half a tone), beginning and overlap on the
/// common time fit best as a whole, by the same dynamic programming as a spelling distance (Wagner & Fischer
/// 1974, JACM 21); a pair costs more than two unpaired notes when they don't overlap, begin more than 0.5 s
/// apart, or are further apart in pitch than a fourth without beginning together. Phrases belong together
/// when a third of the smaller one's notes are paired.
Counterparts find_counterparts(const Side& a, const Side& b, const Alignment& alignment);

} // namespace luft::compare
