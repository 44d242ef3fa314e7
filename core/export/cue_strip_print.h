// The programme at a glance, drawn: the printed sister of cue_strip.
#pragma once

#include "script/cue_sheet.h"
#include "sheet/canvas.h"

namespace luft::exports {

/// Points that the drawing takes, with its ruler and the meaning of its signs.
inline constexpr double kStripHeight = 66;

/// Draws the programme from start to end, `width` points across, its top left corner at the canvas' origin:
/// music solid, halts striped with their stops' numbers, replays lined, flags where asides begin. Nothing for
/// an empty programme.
void draw_cue_strip(sheet::Canvas& canvas, const script::CueSheet& sheet, double width,
                    const sheet::Colours& colours);

} // namespace luft::exports
