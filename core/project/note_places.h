// Syllables onto notes: the smallest step of spreading words.
#pragma once

#include "base/units.h"
#include "project/sung_lines.h"

#include <span>
#include <vector>

namespace luft::project {

/// A note to put syllables on.
struct SungNote {
    Span span;
    bool begins_phrase = false; ///< the first one of its phrase
};

/// Where each syllable begins, in their order, when they are sung on these notes, which are in order of time.
///
/// As many notes as syllables: one each. More notes: each syllable begins on a note, the first on the first,
/// and holds the notes up to the next syllable; of all ways the one that costs least,
///   - 1 for a note more than a syllable asks for (sung_lines.h) and 0.7 for each further one: a melisma is
///   on
///     one syllable; half as much again when its word goes on after it: it is on the last one of a word;
///   - 1 for each note less;
///   - up to 1 for beginning on a note shorter than half the usual (median) one: short notes are ornaments;
///   - 3 for holding a syllable into the next phrase: nobody breathes in the middle of one;
///   - up to 0.25 for ending a line on less than the longest note's time: lines end on long notes;
///   - less 0.3 for the share of all sung time that syllables with spare notes hold: of two that cost the
///     same, the one that is held longer.
/// Fewer notes: each note gets one, and each of the others goes where its share of the note is then the
/// longest, six tenths of a line's last note counted, since lines end on long notes; syllables on one note
/// share it evenly. Without notes, none stands anywhere: the result is empty. The costs were chosen on
/// made-up lines; there is no source.
std::vector<Seconds> places_on_notes(std::span<const Syllable> syllables, std::span<const SungNote> notes);

} // namespace luft::project
