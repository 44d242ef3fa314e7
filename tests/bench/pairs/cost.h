// What aligning costs.
#pragma once

#include "base/units.h"

#include <string>

namespace luft::bench {

struct Cost {
    Seconds length;             ///< of each of the two performances
    double seconds = 0;         ///< of one core, the best of three
    double plain_seconds = 0;   ///< of plain dynamic time warping, below, in the same run
    double megabytes = 0;       ///< what aligning needs on top of the two performances, at its peak
    double plain_megabytes = 0; ///< the table of plain warping
};

/// Two performances of a piece by chance (tests/compare/material.h), with harmony, the second with rubato, in
/// another tempo and key. Plain warping is the textbook's (Müller 2015, section 3.2): every pair of columns
/// of 0.25 s, cost 1 minus the cosine of their twelve pitch classes, one table, steps (1,0), (0,1), (1,1), in
/// the key that is right; it finds no key, no gaps, and no place within a column. Runs `program --cost
/// SECONDS` and waits for it, so that memory is that of a process of its own. Throws Error(internal) when it
/// fails.
Cost measure_cost(const std::string& program, Seconds length);

/// What that process does; prints the figures.
void show_cost(Seconds length);

} // namespace luft::bench
