// Breaths and switches over the ribbon, glyphs at its ends, and figures beside it.
#include "base/text.h"
#include "sheet/draw_parts.h"
#include "sheet/glyphs.h"
#include "sheet/measures.h"

#include <algorithm>
#include <cmath>

namespace luft::sheet {
namespace {

constexpr Seconds kApart{0.05};   ///< a gap before or after a note: its edge is worth a sign
constexpr Cents kWorthSaying{10}; ///< intonation under this is left unsaid (no source: what ears let pass)
constexpr Seconds kRoomForFigures{0.35};

bool counts(const project::Mark& mark, Confidence confidence) {
    return mark.state == project::MarkState::kept || confidence >= profile::kLeastConfidence;
}

void draw_selection(Canvas& canvas, const project::Mark& mark, double x, double y, const Look& look) {
    if (look.selected_mark == mark.id) canvas.box(x - 9, y - 9, 18, 20, look.colours.selected, 5);
}

} // namespace

void draw_edges(Canvas& canvas, const SungLine& line, const Look& look) {
    if (line.per_second < kEdgesFrom) return;
    const auto& notes = *line.notes;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        const auto& note = std::get<marks::Note>(notes[i]->what);
        const double y = line.y_of(note.pitch.value() - retuned(*line.source));
        const bool after_gap = i == 0 || note.span.start - notes[i - 1]->span().end > kApart;
        const bool before_gap = i + 1 == notes.size() || notes[i + 1]->span().start - note.span.end > kApart;
        if ((after_gap || note.onset.kind != marks::OnsetKind::balanced) &&
            counts(*notes[i], note.onset.confidence))
            draw_onset(canvas, line.x_of(note.span.start), y, note.onset.kind, look.colours.ink);
        if (before_gap && counts(*notes[i], note.offset.confidence))
            draw_offset(canvas, line.x_of(note.span.end), y, note.offset.kind, look.colours.ink);
    }
}

void draw_figures(Canvas& canvas, const SungLine& line, const Look& look) {
    if (line.per_second < kFiguresFrom) return;
    for (const auto* mark : *line.notes) {
        const auto& note = std::get<marks::Note>(mark->what);
        if (note.span.length() < kRoomForFigures) continue;
        const double x = (line.x_of(note.span.start) + line.x_of(note.span.end)) / 2;
        const double y = line.y_of(note.pitch.value() - retuned(*line.source));
        if (note.vibrato)
            canvas.text(x, y - 12,
                        fixed(note.vibrato->rate.value(), 1) + " Hz ±" +
                            fixed(note.vibrato->extent.value(), 0),
                        {11, false, true}, look.colours.soft, Anchor::middle);
        if (std::abs(note.cents.value()) >= kWorthSaying.value())
            canvas.text(x, y + 19,
                        (note.cents.value() > 0 ? "+" : "−") + fixed(std::abs(note.cents.value()), 0) + " ct",
                        {11, false, false}, look.colours.soft, Anchor::middle);
    }
}

void draw_breath_sign(Canvas& canvas, const Staff& staff, double x, const project::Mark& mark,
                      const Look& look) {
    const auto& breath = std::get<marks::Breath>(mark.what);
    const double sign = staff.top - kSignAbove;
    draw_selection(canvas, mark, x, sign, look);
    const double foot = breath.inside_phrase ? staff.bottom : staff.top + 2;
    canvas.line(x, sign + 10, x, foot, ink_of(mark, look), 1, line_of(mark));
    draw_breath(canvas, x, sign, breath.evidence_kind, ink_of(mark, look), look.colours.paper);
}

void draw_switch_sign(Canvas& canvas, const Staff& staff, double x, const project::Mark& mark,
                      const Look& look) {
    const double sign = staff.top - kSignAbove;
    draw_selection(canvas, mark, x, sign, look);
    canvas.line(x, sign + 6, x, staff.bottom, look.colours.change, 1.1, line_of(mark));
    draw_switch(canvas, x, sign, std::get<marks::Switch>(mark.what).to, look.colours.change);
}

void draw_breaths_and_switches(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look) {
    const Row& r = layout.rows()[row];
    const Staff staff = layout.staff(row);
    const double right = layout.right_edge() - 8;
    for (const auto* mark : r.breaths) {
        const double x = std::clamp(layout.x_of(row, mark->span().middle()), kGutter - 4, right);
        draw_breath_sign(canvas, staff, x, *mark, look);
    }
    for (const Seconds stop : layout.source().stops)
        if (layout.row_of(stop) == row && r.shown.start <= stop && stop <= r.shown.end)
            draw_stop(canvas, std::clamp(layout.x_of(row, stop), kGutter, right), staff.top,
                      look.colours.ink);
    for (const auto* mark : r.switches) {
        const double x = std::clamp(layout.x_of(row, mark->span().start), kGutter - 4, right);
        draw_switch_sign(canvas, staff, x, *mark, look);
    }
}

} // namespace luft::sheet
