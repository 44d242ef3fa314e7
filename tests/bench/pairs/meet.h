// How near an alignment brings the notes of two performances to each other, over many pairs.
#pragma once

#include "bench/pairs/voices.h"
#include "compare/material.h"

#include <string>
#include <vector>

namespace luft::bench {

/// As the ear hears it, with the true places of its notes.
struct Heard {
    compare::test::Performed said;
    int semitones = 0; ///< its key against the tune's
};
/// `harmony` says whether the sound beside the voice is listened to as well, as the program does.
Heard hear(const Singing& sung, int semitones, bool harmony);

/// Sums over all pairs of one kind.
struct Meeting {
    std::vector<double> errors_ms; ///< of each note's start, carried over
    int notes = 0, lost = 0;       ///< lost: the alignment says that the other side doesn't have it
    int pairs = 0, wrong_keys = 0;
    double worst_median = 0; ///< of any one pair, ms

    void add(const Heard& a, const Heard& b);
    Meeting& operator+=(const Meeting& other);
    [[nodiscard]] std::optional<double> median() const;
    [[nodiscard]] std::optional<double> mean() const;
    [[nodiscard]] std::optional<double> most() const; ///< 95 % of the notes stay under it
};

} // namespace luft::bench
