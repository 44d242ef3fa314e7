#include "sheet/draw.h"

#include "base/text.h"
#include "sheet/draw_parts.h"
#include "sheet/measures.h"

#include <algorithm>
#include <cmath>

namespace luft::sheet {
namespace {

constexpr Type kTime{12, false, false};
constexpr Type kNoteName{11, false, false};

/// Rules where C, E and G lie: enough to read a pitch by, few enough to stay quiet.
bool has_rule(int midi) {
    const int step = ((midi % 12) + 12) % 12;
    return step == 0 || step == 4 || step == 7;
}

} // namespace

Colour ink_of(const project::Mark& mark, const Look& look) {
    return mark.state == project::MarkState::kept ? look.colours.ink : look.colours.faint;
}

Line line_of(const project::Mark& mark) {
    return mark.state == project::MarkState::kept ? Line::solid : Line::dotted;
}

Colour verdict_colour(project::Verdict verdict, const Colours& colours) {
    switch (verdict) {
    case project::Verdict::strength:
        return colours.strength;
    case project::Verdict::watch:
        return colours.watch;
    case project::Verdict::explain:
        break;
    }
    return colours.explain;
}

void draw_phrase_line(Canvas& canvas, double left, double right, double y, const project::Mark& phrase,
                      bool begins, bool ends, const Look& look) {
    const bool selected = look.selected_mark == phrase.id;
    Path path;
    if (begins)
        path.move(left, y + 5).line(left, y);
    else
        path.move(left, y);
    path.line(right, y);
    if (ends) path.line(right, y + 5);
    canvas.stroke(path, selected ? look.colours.ink : ink_of(phrase, look), selected ? 2.2 : 1.1,
                  line_of(phrase));
    if (!ends) canvas.text(right + 4, y + 3, "…", {13, false, false}, look.colours.soft);
}

void draw_staff(Canvas& canvas, const Staff& staff, const Look& look) {
    const double low = staff.pitch_at(staff.bottom);
    for (int midi = static_cast<int>(std::ceil(low)); midi <= staff.high; ++midi) {
        const double y = staff.y_of(midi);
        if (!has_rule(midi) || y < staff.top + 2 || y > staff.bottom - 1) continue;
        canvas.line(staff.left, y, staff.right, y, look.colours.rule, 0.8);
        canvas.text(staff.left - 7, y + 4, note_name(MidiPitch(midi)), kNoteName, look.colours.faint,
                    Anchor::end);
    }
}

void draw_rest(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look) {
    const Row& r = layout.rows()[row];
    const double y = layout.places()[row].staff_top + kRestHeight / 2;
    const double left = layout.origin(), right = layout.x_of(row, r.shown.end);
    canvas.line(left, y, right, y, look.colours.rule, 5);
    canvas.line(left, y - 7, left, y + 7, look.colours.rule, 1.4);
    canvas.line(right, y - 7, right, y + 7, look.colours.rule, 1.4);
    canvas.text(right + 10, y + 4, "rest of " + fixed(r.shown.length().value(), 1) + " s", kTime,
                look.colours.soft);
}

void draw_row(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look) {
    const Row& r = layout.rows()[row];
    const PlacedRow& place = layout.places()[row];
    const bool rest = r.kind == Row::Kind::rest;
    canvas.text(8, rest ? place.staff_top + kRestHeight / 2 + 4 : place.staff_top - 8,
                clock_text(rest ? r.shown.start : r.sung.start), kTime, look.colours.soft);
    canvas.save();
    canvas.clip(0, 0, layout.right_edge(), place.height);
    if (rest) {
        draw_rest(canvas, layout, row, look);
    } else {
        const SungLine line = layout.line(row);
        draw_staff(canvas, line.staff, look);
        if (r.phrase)
            draw_phrase_line(canvas, line.x_of(r.sung.start), line.x_of(r.sung.end), place.staff_top - 8,
                             *r.phrase, !r.continued, !r.goes_on, look);
        draw_ribbon(canvas, line, look);
        draw_edges(canvas, line, look);
        draw_figures(canvas, line, look);
    }
    draw_words(canvas, layout, row, look);
    draw_breaths_and_switches(canvas, layout, row, look);
    draw_brackets(canvas, layout, row, look);
    canvas.restore();
    draw_cards(canvas, layout, row, look);
}

} // namespace luft::sheet
