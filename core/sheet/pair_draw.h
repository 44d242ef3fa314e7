// Draws two performances below each other, row by row.
#pragma once

#include "sheet/draw.h"
#include "sheet/pair_layout.h"

namespace luft::sheet {

/// How they are shown.
struct PairLook {
    Look look = {};
    std::optional<std::size_t> selected = {}; ///< a difference, by its index
};

/// What stands over the first row, its top left corner at the canvas' origin.
void draw_pair_head(Canvas& canvas, const PairLayout& layout, const PairLook& look);

/// Draws one row, its top left corner at the canvas' origin.
void draw_pair_row(Canvas& canvas, const PairLayout& layout, std::size_t row, const PairLook& look);

} // namespace luft::sheet
