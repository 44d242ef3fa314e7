// Coarse to fine: the key and the path of columns between two pinned places.
#pragma once

#include "base/progress.h"
#include "compare/alignment.h"
#include "compare/warp.h"

#include <vector>

namespace luft::compare {

/// What is aligned at once: from pin to pin, or to an end. At a free end, introductions cost no opening.
struct Part {
    Span a, b;
    bool free_start = true, free_end = true;
};

/// A piece of path without gaps.
struct Run {
    std::vector<Pair> corners; ///< the path's corners at the finest columns; rising, not always on both sides
    std::vector<float> unlikeness; ///< between each corner and the next
};

/// Semitones, 0 to 11, by which B must be moved down for the cheapest path over coarse columns.
int likeliest_key(const Side& a, const Side& b, const std::vector<Part>& parts, const Progress& progress);

/// The path in order of time. What lies between two runs has no counterpart, and is 2 s or longer on one
/// side.
std::vector<Run> runs_of(const Side& a, const Side& b, const Part& part, int key, const Progress& progress);

} // namespace luft::compare
