// The tempo curve, drawn: the printed sister of tempo_curve.
#pragma once

#include "compare/comparison.h"
#include "sheet/canvas.h"

namespace luft::exports {

/// Points that the drawing takes.
inline constexpr double kTempoCurveHeight = 170;

/// Whether there is anything to draw.
bool has_tempo_curve(const compare::Comparison& comparison);

/// `width` points across, its top left corner at the canvas' origin.
void draw_tempo_curve(sheet::Canvas& canvas, const compare::Comparison& comparison, double width,
                      const sheet::Colours& colours);

} // namespace luft::exports
