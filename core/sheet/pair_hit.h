// What lies under a point of two performances below each other.
#pragma once

#include "sheet/pair_layout.h"

#include <variant>

namespace luft::sheet {

/// The sign of a difference.
struct SignHit {
    std::size_t difference = 0; ///< index into the source's
};

/// A place in one performance's line.
struct LineHit {
    std::size_t row = 0;
    Which which = Which::a;
    Seconds time; ///< its own
};

/// Nothing, or one of these.
using PairHit = std::variant<std::monostate, SignHit, LineHit>;

/// (x, y) from the top left corner of all. Signs win over the lines; what lies between the lines belongs to
/// neither.
PairHit pair_hit(const PairLayout& layout, double x, double y);

} // namespace luft::sheet
