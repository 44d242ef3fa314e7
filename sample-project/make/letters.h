// Letters of our own drawing: capitals made of strokes, so that the pictures need no font.
#pragma once

#include "make/canvas.h"

#include <string_view>

namespace luft::sample {

/// Width of a text whose capitals are `size` pixels high. Small letters are shown as capitals.
double text_width(std::string_view text, double size);

/// Writes it from `left`, the letters standing on `left.y`; returns where the next letter would begin.
Point write_text(Canvas& canvas, Point left, std::string_view text, double size, Colour colour);

} // namespace luft::sample
