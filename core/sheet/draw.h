// Draws a sheet, row by row.
#pragma once

#include "sheet/canvas.h"
#include "sheet/layout.h"

#include <optional>

namespace luft::sheet {

/// How a sheet is shown.
struct Look {
    Colours colours = light_colours();
    std::optional<project::MarkId> selected_mark = {};
    std::optional<project::MomentId> selected_moment = {};
};

/// Draws one row with its part of the margin, its top left corner at the canvas' origin.
void draw_row(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look);

/// What the signs mean, in as many lines as the width asks for. Returns the height.
double draw_legend(Canvas& canvas, double x, double y, double width, const Colours& colours);

} // namespace luft::sheet
