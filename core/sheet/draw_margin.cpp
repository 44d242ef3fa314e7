// Moments: brackets over the ribbon and cards in the margin.
#include "sheet/draw_parts.h"
#include "sheet/glyphs.h"
#include "sheet/measures.h"

#include <string>

namespace luft::sheet {
namespace {

bool kept(const project::Moment& moment) {
    return moment.state == project::MarkState::kept;
}

} // namespace

void draw_brackets(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look) {
    const PlacedRow& place = layout.places()[row];
    const double lowest =
        layout.rows()[row].kind == Row::Kind::rest ? place.staff_top : place.staff_top - kAbove;
    for (const auto& b : layout.brackets_on(row)) {
        const auto& moment = layout.source().moments[b.moment];
        const Colour colour = verdict_colour(moment.verdict, look.colours);
        const bool selected = look.selected_moment == moment.id;
        const double y = lowest - 4 - b.lane * kLane;
        if (selected)
            canvas.box(b.left, y, b.right - b.left, place.staff_bottom - y, look.colours.selected, 2);
        Path path;
        if (b.begins)
            path.move(b.left, y + 6).line(b.left, y);
        else
            path.move(b.left, y);
        path.line(b.right, y);
        if (b.ends) path.line(b.right, y + 6);
        canvas.stroke(path, colour, selected ? 2.4 : 1.5, kept(moment) ? Line::solid : Line::dotted);
        if (b.begins)
            draw_number(canvas, b.left - 1, y - 1, b.number, colour, look.colours.paper, kept(moment));
        else
            canvas.text(b.left + 2, y - 3, std::to_string(b.number), {10, false, false}, colour);
    }
}

void draw_cards(Canvas& canvas, const Layout& layout, std::size_t row, const Look& look) {
    const Colours& c = look.colours;
    for (const auto& card : layout.cards_on(row)) {
        const auto& moment = layout.source().moments[card.moment];
        const auto words = card_words(moment, layout.source().vocabulary);
        const Colour colour = verdict_colour(moment.verdict, c);
        const bool selected = look.selected_moment == moment.id;
        canvas.box(card.left, card.top, card.width, card.height, c.card, 5);
        canvas.frame(card.left + 0.5, card.top + 0.5, card.width - 1, card.height - 1,
                     selected ? colour : c.rule, selected ? 2 : 1, 5,
                     kept(moment) ? Line::solid : Line::dotted);
        draw_number(canvas, card.left + 14, card.top + 15, card.number, colour, c.card, kept(moment));
        draw_verdict(canvas, card.left + 14, card.top + 34, static_cast<int>(moment.verdict), colour);
        const double x = card.left + kCardIndent, inner = card.width - kCardIndent - kCardPad;
        double y = card.top + kCardPad;
        y += canvas.paragraph(x, y, inner, words.title, kCardTitle, c.ink, kTitleLines);
        if (!words.remark.empty())
            y += canvas.paragraph(x, y, inner, words.remark, words.own_remark ? kCardRemark : kCardEvidence,
                                  words.own_remark ? c.ink : c.soft,
                                  words.own_remark ? kRemarkLines : kEvidenceLines);
        if (!words.drill.empty()) canvas.paragraph(x, y, inner, words.drill, kCardDrill, c.soft, 1);
    }
}

} // namespace luft::sheet
