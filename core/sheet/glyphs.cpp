#include "sheet/glyphs.h"

#include <string>

namespace luft::sheet {
namespace {

Path circle(double x, double y, double r) {
    constexpr double k = 0.5523; // four curves that make a circle
    return Path()
        .move(x + r, y)
        .curve({x + r, y + k * r}, {x + k * r, y + r}, {x, y + r})
        .curve({x - k * r, y + r}, {x - r, y + k * r}, {x - r, y})
        .curve({x - r, y - k * r}, {x - k * r, y - r}, {x, y - r})
        .curve({x + k * r, y - r}, {x + r, y - k * r}, {x + r, y})
        .close();
}

/// Three dots that spread out to one side.
void draw_air(Canvas& canvas, double x, double y, double side, Colour colour) {
    canvas.fill(circle(x + side * 3, y, 1.1), colour);
    canvas.fill(circle(x + side * 6.5, y - 2.6, 1.1), colour);
    canvas.fill(circle(x + side * 6.5, y + 2.6, 1.1), colour);
}

} // namespace

void draw_breath(Canvas& canvas, double x, double y, marks::BreathEvidence kind, Colour ink, Colour paper) {
    const Path comma = Path()
                           .move(x - 1.4, y + 2.9)
                           .curve({x - 3.8, y + 2.2}, {x - 3.6, y - 3.2}, {x + 0.2, y - 3.2})
                           .curve({x + 3.2, y - 3.2}, {x + 3.8, y - 0.6}, {x + 3.5, y + 1.2})
                           .curve({x + 3.1, y + 4.4}, {x + 0.8, y + 6.8}, {x - 2.0, y + 7.8})
                           .curve({x - 0.4, y + 6.4}, {x + 0.3, y + 4.6}, {x - 1.4, y + 2.9})
                           .close();
    if (kind == marks::BreathEvidence::heard) return canvas.fill(comma, ink);
    canvas.fill(comma, paper);
    canvas.stroke(comma, ink, 1.1);
}

void draw_switch(Canvas& canvas, double x, double y, marks::Register to, Colour colour) {
    const double d = to == marks::Register::head ? -5 : 5;
    canvas.fill(Path().move(x - 4.5, y - d / 2).line(x + 4.5, y - d / 2).line(x, y + d).close(), colour);
}

void draw_onset(Canvas& canvas, double x, double y, marks::OnsetKind kind, Colour colour) {
    if (kind == marks::OnsetKind::glottal) canvas.box(x - 1.5, y - 7, 2.6, 14, colour);
    if (kind == marks::OnsetKind::breathy) draw_air(canvas, x, y, -1, colour);
    if (kind == marks::OnsetKind::balanced)
        canvas.stroke(Path().move(x + 1, y - 6).curve({x - 5, y - 4}, {x - 5, y + 4}, {x + 1, y + 6}), colour,
                      1.2);
}

void draw_offset(Canvas& canvas, double x, double y, marks::OffsetKind kind, Colour colour) {
    if (kind == marks::OffsetKind::clean) canvas.line(x + 1, y - 6, x + 1, y + 6, colour, 1.2);
    if (kind == marks::OffsetKind::breathy) draw_air(canvas, x, y, 1, colour);
    if (kind == marks::OffsetKind::trailing)
        canvas.stroke(Path().move(x + 1, y).curve({x + 4, y}, {x + 6, y + 2}, {x + 8, y + 7}), colour, 1.2);
}

void draw_stop(Canvas& canvas, double x, double y, Colour colour) {
    for (const double left : {-3.0, 1.0})
        canvas.line(x + left, y + 6, x + left + 4, y - 6, colour, 1.7);
}

void draw_number(Canvas& canvas, double x, double y, int number, Colour colour, Colour paper, bool kept) {
    const std::string words = std::to_string(number);
    const Path ring = circle(x, y, words.size() > 2 ? 10 : 8.5);
    canvas.fill(ring, kept ? colour : paper);
    if (!kept) canvas.stroke(ring, colour, 1.1, Line::dotted);
    canvas.text(x, y + 4, words, {11, kept, false}, kept ? paper : colour, Anchor::middle);
}

void draw_verdict(Canvas& canvas, double x, double y, int verdict, Colour colour) {
    if (verdict == 0) {
        canvas.box(x - 4.5, y - 1.2, 9, 2.4, colour);
        canvas.box(x - 1.2, y - 4.5, 2.4, 9, colour);
    } else if (verdict == 1) {
        canvas.fill(Path().move(x, y - 5).line(x + 5, y).line(x, y + 5).line(x - 5, y).close(), colour);
    } else {
        canvas.fill(circle(x, y, 3), colour);
    }
}

} // namespace luft::sheet
