#include "files/sign.h"

#include "sheet/glyphs.h"

namespace luft::files {
namespace {

constexpr double kDrawnAt = 32; ///< units a side of the drawing below

} // namespace

void draw_sign(sheet::Canvas& canvas, double side) {
    const auto colours = sheet::light_colours();
    canvas.clear(colours.paper);
    canvas.save();
    canvas.zoom(side / kDrawnAt);
    canvas.box(0, 23, 32, 3, colours.head);
    canvas.box(0, 29, 32, 1, colours.rule);
    canvas.move(16, 8);
    canvas.zoom(2.2);
    sheet::draw_breath(canvas, 0, 0, marks::BreathEvidence::heard, colours.ink, colours.paper);
    canvas.restore();
}

} // namespace luft::files
