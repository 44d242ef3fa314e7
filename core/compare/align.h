// Finds which moments of two performances of a piece belong together.
#pragma once

#include "base/progress.h"
#include "compare/alignment.h"

namespace luft::compare {

struct AlignOptions {
    std::vector<Pair> pins; ///< set by the coach: the path goes through each, whatever it costs
};

/// Dynamic time warping over features free of tuning and key (columns.h), from coarse to fine: columns of
/// 0.25 s (longer over ten minutes, so that there are 2400 at most), 0.1 s, 20 ms (multi-scale DTW: Müller,
/// Mattes & Kurth 2006, ISMIR; Salvador & Chan 2007). The key is the one of twelve that is cheapest on coarse
/// columns; the octave is the median difference of pitch along the path. Where a note begins or a line ends
/// on both sides within 0.15 s of the path, the path goes through the two marks themselves.
///
/// Time and memory go with the length of the two (coarse level: at most 6 MB). Parts are kept in order: of a
/// verse that one side sings twice, the second counts as added, and Alone::again says where the other sings
/// it. A change of key between the two inside the piece isn't followed. Throws Error(bad_request) when two
/// pins cross or one lies outside, Stopped when told to stop.
Alignment align(const Side& a, const Side& b, const AlignOptions& options = {},
                const Progress& progress = {});

} // namespace luft::compare
