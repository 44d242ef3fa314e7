// Two performances of a piece, compared: what reports are made from.
#pragma once

#include "compare/differences.h"

#include <vector>

namespace luft::compare {

struct Comparison {
    project::Piece piece;
    project::Performance a, b;
    Side side_a, side_b;
    Alignment alignment; ///< without stretches when the two have nothing in common
    Counterparts counterparts;
    std::vector<Difference> differences;                       ///< what B does otherwise, the whole first
    std::vector<project::SungWord> words_a = {}, words_b = {}; ///< in order of time; empty where not known
};

} // namespace luft::compare
