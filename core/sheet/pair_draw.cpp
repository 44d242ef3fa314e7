#include "sheet/pair_draw.h"

#include "base/text.h"
#include "sheet/draw_parts.h"
#include "sheet/glyphs.h"
#include "sheet/measures.h"
#include "sheet/rows.h"

#include <algorithm>
#include <array>

namespace luft::sheet {
namespace {

constexpr Type kName{12, true, false}, kTime{12, false, false}, kEmpty{12.5, false, true};
constexpr Confidence kUnsure{0.5}; ///< differences under it aren't told either
constexpr double kFromRibbon = 8;  ///< where a tie begins
constexpr double kPin = 4;

struct Drawing {
    Canvas& canvas;
    const PairLayout& layout;
    std::size_t row;
    const PairLook& look;

    [[nodiscard]] const Colours& colours() const { return look.look.colours; }
    [[nodiscard]] const PairRow& what() const { return layout.rows()[row]; }
    [[nodiscard]] const PlacedPair& place() const { return layout.places()[row]; }
};

void draw_name(const Drawing& d, Which which) {
    const Staff& staff = d.layout.staff(d.row, which);
    d.canvas.paragraph(8, staff.top - kAbove + 1, kPairGutter - 16,
                       d.layout.source().of(which).performance.label, kName, d.colours().ink, 1);
    const PairPart& part = d.what().part(which);
    if (!part.lacking) d.canvas.text(8, staff.top - 1, clock_text(part.sung.start), kTime, d.colours().soft);
}

void draw_empty(const Drawing& d, Which which) {
    const Staff& staff = d.layout.staff(d.row, which);
    d.canvas.frame(staff.left, staff.top, staff.right - staff.left, staff.bottom - staff.top,
                   d.colours().rule, 1, 4, Line::dashed);
    d.canvas.text(d.layout.origin(), (staff.top + staff.bottom) / 2 + 4,
                  "Nothing in " + d.layout.source().of(which).performance.label + " goes with this line.",
                  kEmpty, d.colours().soft);
}

void draw_line(const Drawing& d, Which which) {
    draw_name(d, which);
    const PairPart& part = d.what().part(which);
    if (part.lacking) return draw_empty(d, which);
    const SungLine line = d.layout.line(d.row, which);
    draw_staff(d.canvas, line.staff, d.look.look);
    for (const auto* phrase : part.phrases) {
        const Span span = phrase->span();
        const bool begins = span.start >= part.sung.start, ends = span.end <= part.sung.end;
        draw_phrase_line(d.canvas, line.x_of(std::max(span.start, part.sung.start)),
                         line.x_of(std::min(span.end, part.sung.end)), line.staff.top - 8, *phrase, begins,
                         ends, d.look.look);
    }
    draw_ribbon(d.canvas, line, d.look.look);
    draw_edges(d.canvas, line, d.look.look);
    draw_figures(d.canvas, line, d.look.look);
    const auto held = [&](Seconds t) {
        return std::clamp(line.x_of(t), kPairGutter - 4, d.layout.view().width - 8);
    };
    for (const auto* breath : part.breaths)
        draw_breath_sign(d.canvas, line.staff, held(breath->span().middle()), *breath, d.look.look);
    for (const auto* change : part.switches)
        draw_switch_sign(d.canvas, line.staff, held(change->span().start), *change, d.look.look);
    const auto& base = which == Which::a ? d.place().words_a : d.place().words_b;
    if (!base) return;
    for (const auto& word : d.layout.words(which))
        if (word.row == d.row) draw_word(d.canvas, word, *base, d.look.look);
}

/// The place of a difference in one line: from x to x.
std::optional<std::pair<double, double>> reach(const Drawing& d, const PairSign& sign, Which which) {
    const auto& span = which == Which::a ? sign.a : sign.b;
    if (!span || d.what().part(which).lacking) return std::nullopt;
    const double left = std::max(kPairGutter, d.layout.x_of(d.row, which, span->start));
    const double right =
        std::min(d.layout.view().width - kRightPad / 2, d.layout.x_of(d.row, which, span->end));
    return std::pair(left, std::max(right, left + 4));
}

void draw_reaches(const Drawing& d) {
    for (const auto& sign : d.layout.signs()) {
        if (sign.row != d.row) continue;
        const bool selected = d.look.selected == sign.difference;
        for (const Which which : kBoth) {
            const auto at = reach(d, sign, which);
            if (!at) continue;
            const Staff& staff = d.layout.staff(d.row, which);
            if (selected)
                d.canvas.box(at->first, staff.top, at->second - at->first, staff.bottom - staff.top,
                             d.colours().selected, 3);
            const double y = which == Which::a ? staff.bottom + 1 : staff.top - 1;
            d.canvas.line(at->first, y, at->second, y, d.colours().watch, selected ? 3 : 1.6);
        }
    }
}

void draw_signs(const Drawing& d) {
    for (const auto& sign : d.layout.signs()) {
        if (sign.row != d.row) continue;
        const double middle = sign.top + kSignLane / 2;
        if (d.look.selected == sign.difference)
            d.canvas.box(sign.left - 10, sign.top + 1, sign.width + 16, kSignLane - 2, d.colours().selected,
                         5);
        draw_number(d.canvas, sign.left, middle, sign.number, d.colours().watch, d.colours().paper, true);
        d.canvas.text(sign.left + 13, middle + 4, sign.words, kSignType, d.colours().ink);
    }
}

void draw_ties(const Drawing& d) {
    for (const auto& tie : d.layout.ties())
        if (tie.row == d.row)
            d.canvas.line(tie.a.x, tie.a.y + kFromRibbon, tie.b.x, tie.b.y - kFromRibbon, d.colours().faint,
                          0.9, Line::dashed);
}

void draw_added(const Drawing& d) {
    for (const auto& added : d.layout.added()) {
        if (added.row != d.row) continue;
        const SungLine line = d.layout.line(d.row, added.which);
        const auto& note = std::get<marks::Note>(added.note->what);
        const double left = line.x_of(note.span.start), right = line.x_of(note.span.end);
        const double y = line.y_of(note.pitch.value() - retuned(*line.source));
        d.canvas.frame(left - 1, y - 9, right - left + 2, 18, d.colours().watch, 1.1, 4);
    }
}

void draw_pins(const Drawing& d) {
    for (const auto& pin : d.layout.source().pins) {
        if (d.layout.row_of(Which::a, pin.a) != d.row) continue;
        const double a = d.layout.x_of(d.row, Which::a, pin.a), b = d.layout.x_of(d.row, Which::b, pin.b);
        const Staff &upper = d.place().a, &lower = d.place().b;
        d.canvas.line(a, upper.top, a, upper.bottom, d.colours().playhead, 1.2);
        d.canvas.line(a, upper.bottom, b, lower.top, d.colours().playhead, 1.2);
        d.canvas.line(b, lower.top, b, lower.bottom, d.colours().playhead, 1.2);
        for (const Point p : {Point{a, upper.top}, Point{b, lower.bottom}})
            d.canvas.box(p.x - kPin, p.y - kPin, 2 * kPin, 2 * kPin, d.colours().playhead, 1);
    }
}

} // namespace

void draw_pair_head(Canvas& canvas, const PairLayout& layout, const PairLook& look) {
    double y = kPairHead;
    for (std::size_t i = 0; i < layout.head().size(); ++i)
        y += canvas.paragraph(kPairHead, y, layout.view().width - 2 * kPairHead, layout.head()[i],
                              kPairHeadType, i == 0 ? look.look.colours.soft : look.look.colours.ink);
}

void draw_pair_row(Canvas& canvas, const PairLayout& layout, std::size_t row, const PairLook& look) {
    const Drawing d{canvas, layout, row, look};
    canvas.save();
    canvas.clip(0, 0, layout.view().width, d.place().height);
    draw_reaches(d);
    draw_ties(d);
    for (const Which which : kBoth)
        draw_line(d, which);
    draw_added(d);
    draw_pins(d);
    draw_signs(d);
    if (d.what().sure < kUnsure)
        canvas.text(layout.view().width - kRightPad, d.place().a.top - kAbove + 13,
                    "not sure that these belong together", kEmpty, d.colours().soft, Anchor::end);
    canvas.line(8, d.place().height - 0.5, layout.view().width - 8, d.place().height - 0.5, d.colours().rule,
                0.8);
    canvas.restore();
}

} // namespace luft::sheet
