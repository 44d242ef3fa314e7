// Which differences to speak of first.
#pragma once

#include "compare/difference.h"

#include <cstddef>
#include <vector>

namespace luft::compare {

/// How far a size is beyond measuring error, in standard errors of it, 0 to 6. Of what is counted: so many
/// standard errors as a normal deviate of that probability is (two-sided), so that both kinds stand on one
/// scale. Six is the most, as chance is out of the question there (2 in 10^9), and a larger figure would
/// only say that one measure is finer than another.
double beyond(const Difference& difference);

/// What a kind is about; of one matter a listener soon has enough.
enum class Matter {
    key,
    tempo,
    range,
    breathing,
    registers,
    edges,
    vibrato,
    intonation,
    notes,
    level,
    colour
};
Matter matter_of(DifferenceKind kind);

struct Telling {
    std::size_t difference = 0;             ///< index in the list that was asked
    std::vector<std::size_t> likewise = {}; ///< others that say the same matter of the same place: a breath
                                            ///< saved is often a phrase joined, too
};

/// At most `most`, the most telling first: by `beyond` times confidence, one of each matter before a second
/// of any (ten breaths are a list, and one is worth a word even where the ear is less sure of breaths than of
/// pitch); of equals the whole comes first, then the earlier one. Over all, key, tuning and tempo are left
/// out: they stand at the head of every report.
std::vector<Telling> most_telling(const std::vector<Difference>& differences, std::size_t most = 6);

} // namespace luft::compare
