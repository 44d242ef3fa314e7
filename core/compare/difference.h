// One thing that the second performance does otherwise than the first.
#pragma once

#include "base/units.h"

#include <optional>
#include <string>

namespace luft::compare {

enum class DifferenceKind {
    key,               ///< over all: B's key against A's
    tuning,            ///< over all: B's A4 against A's
    tempo,             ///< over all: B's speed against A's
    lowest_note,       ///< over all, beside the key
    highest_note,      ///< over all, beside the key
    tessitura,         ///< over all, beside the key: middle of where half of the sung time lies
    breath_added,      ///< B breathes where A sings on
    breath_saved,      ///< A breathes where B sings on
    breath_moved,      ///< one added and one saved in the same phrases
    phrase_joined,     ///< B sings on where A's phrase ends
    phrase_broken,     ///< B's phrase ends where A sings on
    other_register,    ///< at the same note or notes
    onset,             ///< kind of a note's beginning
    offset,            ///< kind of a note's end
    vibrato,           ///< on one of the two only
    vibrato_rate,      ///< on both, faster or slower
    vibrato_extent,    ///< on both, wider or narrower
    note_intonation,   ///< the same note, higher or lower
    other_note,        ///< another note in its place
    phrase_intonation, ///< a phrase's mean against its performance's tuning
    scoop,             ///< how far below a note is begun
    drift,             ///< how far a held note moves
    crack,             ///< the voice breaks inside a note, on one of the two only
    vowel,             ///< the same note's, more open or further forward, between the two voices' usual
    closure,           ///< clearer or breathier, of a phrase or over all; sound only hints at it
    ring,              ///< more or less of it, of a phrase or over all
    level_range,       ///< over all: from soft to loud
    level_shape,       ///< how a phrase rises or fades
    note_level,        ///< how a held note rises or fades
    phrase_tempo,      ///< a phrase against the whole
    added_notes,       ///< notes that only one sings within a phrase of both: a turn, a run
};

enum class Unit { times, semitones, cents, hertz, seconds, decibels, percent };

struct Difference {
    DifferenceKind kind = DifferenceKind::key;
    std::optional<Span> a, b; ///< where, on each side's time; none when it holds for the whole
    double size = 0;          ///< B minus A; of `times`, how often more (below 0: less) B does it
    Unit unit = Unit::times;
    /// What measuring error alone would give, in the same unit (one standard error); of `times`, the
    /// probability that it is nothing but the ear's error.
    double expected = 0;
    Confidence confidence;
    std::string sentence; ///< plain, for a teacher; a full one
};

/// The kind in one or two words, for tables and other programs: "breath added".
const char* name_of(DifferenceKind kind);
/// "cents", "%"; empty for times.
const char* name_of(Unit unit);

} // namespace luft::compare
