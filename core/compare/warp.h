// Dynamic time warping that may leave stretches of either side without counterpart.
#pragma once

#include "compare/columns.h"

#include <cstdint>
#include <utility>
#include <vector>

namespace luft::compare {

/// Column i of A stands against column j of B; or, on a side's `alone` cell, it has no counterpart.
struct Cell {
    enum class Kind : std::uint8_t { together, a_alone, b_alone };
    std::int32_t a = 0, b = 0;
    Kind kind = Kind::together;
};

/// Which columns of B are looked at for each column of A: first and last corner of each row of corners, 0 to
/// B's size; one row more than A has columns. Borders rise and neighbouring rows overlap.
using Band = std::vector<std::pair<std::int32_t, std::int32_t>>;

struct Warping {
    std::vector<Cell> path;
    double cost = 0; ///< mean over both lengths, 0 to 1; what is without counterpart counts kAlone
};

/// What a stretch without counterpart costs for each of its seconds, where a stretch against its counterpart
/// costs its unlikeness, each side carrying half. Tuned on seeds 1 to 8 of tests/compare.
inline constexpr double kAlone = 0.45;

/// The cheapest path through the band. Müller 2015 (Fundamentals of Music Processing, section 4.2: dynamic
/// programming; 4.2.2.1: steps (1,1), (1,0), (0,1), weighted by the time that they take so that the diagonal
/// isn't preferred for being short; here the one-sided ones cost a little more, so that tempo doesn't change
/// without reason). Stretches without counterpart are two further states with an opening cost, as gaps in
/// Gotoh 1982 (J. Mol. Biol. 162). `free_start`, `free_end`: no opening cost at the ends, as for an
/// introduction. Time and memory go with the area of the band: twelve bytes a column of B and one byte a
/// corner.
Warping warp(const Columns& a, const Columns& b, const Band& band, bool free_start, bool free_end);

/// Every pair of columns.
Band whole(const Columns& a, const Columns& b);

/// The band around a path found at coarser columns, `around` to each side (Salvador & Chan 2007, FastDTW;
/// Müller, Mattes & Kurth 2006, ISMIR).
Band around_path(const Warping& coarse, Seconds coarse_hop, const Columns& a, const Columns& b,
                 Seconds around);

} // namespace luft::compare
