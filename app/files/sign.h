// The program's sign: the written breath mark over a rule of the sheet.
#pragma once

#include "sheet/canvas.h"

namespace luft::files {

/// Fills a square canvas of `side` units with it. Title bars, the About box and the installed icons all show
/// this one.
void draw_sign(sheet::Canvas& canvas, double side);

} // namespace luft::files
