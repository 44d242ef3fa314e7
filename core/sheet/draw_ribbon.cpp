#include "sheet/draw_parts.h"
#include "sheet/measures.h"

#include <algorithm>

namespace luft::sheet {
namespace {

Path outline(const Layout& layout, std::size_t row, const RibbonPiece& piece) {
    const double scale = std::clamp(layout.view().semitone / 7, 0.7, 1.6);
    const auto half = [&](const RibbonPoint& p) { return scale * (kThin + p.loud * (kThick - kThin)) / 2; };
    Path path;
    for (const auto& p : piece.points) {
        const double x = layout.x_of(row, p.time), y = layout.y_of(row, p.pitch) - half(p);
        path.empty() ? path.move(x, y) : path.line(x, y);
    }
    for (auto p = piece.points.rbegin(); p != piece.points.rend(); ++p)
        path.line(layout.x_of(row, p->time), layout.y_of(row, p->pitch) + half(*p));
    return path.close();
}

} // namespace

void draw_ribbon(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look) {
    const Row& r = layout.rows()[row];
    const Colours& c = look.colours;
    for (const auto* mark : r.notes)
        if (look.selected_mark == mark->id) {
            const double left = layout.x_of(row, mark->span().start);
            const double right = layout.x_of(row, mark->span().end);
            canvas.box(left, layout.places()[row].staff_top, right - left,
                       layout.places()[row].staff_bottom - layout.places()[row].staff_top, c.selected, 3);
        }
    for (const auto& piece :
         ribbon(layout.source(), r.sung, r.sung_notes(), r.low, r.high, layout.levels())) {
        const Path path = outline(layout, row, piece);
        if (!piece.sung_in) {
            canvas.fill(path, c.soft);
        } else if (*piece.sung_in == marks::Register::chest) {
            canvas.fill(path, c.chest);
        } else {
            canvas.fill_striped(path, c.head, c.paper);
            canvas.stroke(path, c.head, 0.9);
        }
    }
}

} // namespace luft::sheet
