#include "sheet/draw_parts.h"
#include "sheet/measures.h"

#include <algorithm>

namespace luft::sheet {
namespace {

Path outline(const SungLine& line, const RibbonPiece& piece) {
    const double scale = std::clamp(line.staff.semitone / 7, 0.7, 1.6);
    const auto half = [&](const RibbonPoint& p) { return scale * (kThin + p.loud * (kThick - kThin)) / 2; };
    Path path;
    for (const auto& p : piece.points) {
        const double x = line.x_of(p.time), y = line.y_of(p.pitch) - half(p);
        path.empty() ? path.move(x, y) : path.line(x, y);
    }
    for (auto p = piece.points.rbegin(); p != piece.points.rend(); ++p)
        path.line(line.x_of(p->time), line.y_of(p->pitch) + half(*p));
    return path.close();
}

} // namespace

void draw_ribbon(Canvas& canvas, const SungLine& line, const Look& look) {
    const Colours& c = look.colours;
    for (const auto* mark : *line.notes)
        if (look.selected_mark == mark->id) {
            const double left = line.x_of(mark->span().start), right = line.x_of(mark->span().end);
            canvas.box(left, line.staff.top, right - left, line.staff.bottom - line.staff.top, c.selected, 3);
        }
    for (const auto& piece :
         ribbon(*line.source, line.sung, sung_notes(*line.notes), line.low, line.high, line.levels)) {
        const Path path = outline(line, piece);
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
