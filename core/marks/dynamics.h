// Dynamic marks: where a note or phrase lies in the singer's own range of level.
#pragma once

#include "marks/marks.h"
#include "voice/curves.h"

#include <optional>
#include <span>
#include <vector>

namespace luft::marks {

/// The singer's range of level in this performance, cut into equal steps of dB.
struct DynamicRange {
    Decibels soft, loud; ///< 5th and 95th percentile of the note levels, weighted by length
    int steps = 1;       ///< marks that the range has room for, 1 to 6

    [[nodiscard]] Dynamic at(Decibels level) const;
};

/// None with fewer than 8 notes or under 4 s of singing.
///
/// A mark more is given for every `kDynamicStep` that the range spans, so that a narrow range isn't told
/// finer than it is: one mark mf, two mp mf, three mp mf f, four p to f, five p to ff, six pp to ff. Common
/// practice, no source: what a mark means in dB differs between players, pieces and instruments (from memory,
/// unchecked: Patterson 1974, Scientific American 231(5), measured about 10 dB between the softest and the
/// loudest of many players where six marks were asked for), and says nothing of the level in the room: a
/// microphone's distance and later levelling are in it.
std::optional<DynamicRange> dynamic_range(std::span<const Note> notes, voice::Setting setting);

/// Least width of a step. Alone over twice what nine notes in ten are out by in a room (1.3 dB, "figures:
/// level of notes" in tests/marks/phrase_levels_test.cpp); accompanied wider, since real bands double the
/// voice as test bands don't (our choice, no source).
inline constexpr Decibels kDynamicStep{3};
inline constexpr Decibels kDynamicStepAccompanied{5};

/// Fills in the marks of notes and phrases; a phrase has that of its notes' median level by length.
void mark_dynamics(std::vector<Note>& notes, std::vector<Phrase>& phrases, voice::Setting setting);

} // namespace luft::marks
