#include "desk/icon.h"

#include "desk/bitmap.h"
#include "sheet/glyphs.h"

namespace luft::desk {
namespace {

constexpr double kDrawnAt = 32; ///< units a side of the drawing below

wxIcon icon(int side) {
    const auto colours = sheet::light_colours();
    sheet::Canvas canvas = sheet::Canvas::picture(side, side);
    canvas.clear(colours.paper);
    canvas.zoom(side / kDrawnAt);
    canvas.box(0, 23, 32, 3, colours.head);
    canvas.box(0, 29, 32, 1, colours.rule);
    canvas.save();
    canvas.move(16, 8);
    canvas.zoom(2.2);
    sheet::draw_breath(canvas, 0, 0, marks::BreathEvidence::heard, colours.ink, colours.paper);
    canvas.restore();
    wxIcon made;
    made.CopyFromBitmap(bitmap_of(canvas));
    return made;
}

} // namespace

const wxIconBundle& program_icons() {
    static const wxIconBundle icons = [] {
        wxIconBundle made;
        for (const int side : {16, 24, 32, 48, 64, 128})
            made.AddIcon(icon(side));
        return made;
    }();
    return icons;
}

} // namespace luft::desk
