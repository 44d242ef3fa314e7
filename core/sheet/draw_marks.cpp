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

void draw_selection(Canvas& canvas, double x, double y, const Look& look) {
    canvas.box(x - 9, y - 9, 18, 20, look.colours.selected, 5);
}

} // namespace

void draw_edges(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look) {
    if (layout.view().per_second < kEdgesFrom) return;
    const auto& notes = layout.rows()[row].notes;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        const auto& note = std::get<marks::Note>(notes[i]->what);
        const double y = layout.y_of(row, note.pitch.value() - retuned(layout.source()));
        const bool after_gap = i == 0 || note.span.start - notes[i - 1]->span().end > kApart;
        const bool before_gap = i + 1 == notes.size() || notes[i + 1]->span().start - note.span.end > kApart;
        if ((after_gap || note.onset.kind != marks::OnsetKind::balanced) &&
            counts(*notes[i], note.onset.confidence))
            draw_onset(canvas, layout.x_of(row, note.span.start), y, note.onset.kind, look.colours.ink);
        if (before_gap && counts(*notes[i], note.offset.confidence))
            draw_offset(canvas, layout.x_of(row, note.span.end), y, note.offset.kind, look.colours.ink);
    }
}

void draw_figures(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look) {
    if (layout.view().per_second < kFiguresFrom) return;
    for (const auto* mark : layout.rows()[row].notes) {
        const auto& note = std::get<marks::Note>(mark->what);
        if (note.span.length() < kRoomForFigures) continue;
        const double x = (layout.x_of(row, note.span.start) + layout.x_of(row, note.span.end)) / 2;
        const double y = layout.y_of(row, note.pitch.value() - retuned(layout.source()));
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

void draw_breaths_and_switches(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look) {
    const Row& r = layout.rows()[row];
    const PlacedRow& place = layout.places()[row];
    const double sign = place.staff_top - 19;
    const double right = layout.right_edge() - 8;
    for (const auto* mark : r.breaths) {
        const auto& breath = std::get<marks::Breath>(mark->what);
        const double x = std::clamp(layout.x_of(row, breath.span.middle()), kGutter - 4, right);
        if (look.selected_mark == mark->id) draw_selection(canvas, x, sign, look);
        const double foot = breath.inside_phrase ? place.staff_bottom : place.staff_top + 2;
        canvas.line(x, sign + 10, x, foot, ink_of(*mark, look), 1, line_of(*mark));
        draw_breath(canvas, x, sign, breath.evidence_kind, ink_of(*mark, look), look.colours.paper);
    }
    for (const Seconds stop : layout.source().stops)
        if (layout.row_of(stop) == row && r.shown.start <= stop && stop <= r.shown.end)
            draw_stop(canvas, std::clamp(layout.x_of(row, stop), kGutter, right), place.staff_top,
                      look.colours.ink);
    for (const auto* mark : r.switches) {
        const auto& change = std::get<marks::Switch>(mark->what);
        const double x = std::clamp(layout.x_of(row, change.time), kGutter - 4, right);
        if (look.selected_mark == mark->id) draw_selection(canvas, x, sign, look);
        canvas.line(x, sign + 6, x, place.staff_bottom, look.colours.change, 1.1, line_of(*mark));
        draw_switch(canvas, x, sign, change.to, look.colours.change);
    }
}

} // namespace luft::sheet
