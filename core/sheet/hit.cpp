#include "sheet/hit.h"

#include "sheet/measures.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace luft::sheet {
namespace {

constexpr double kNear = 9;    ///< around a sign, in units
constexpr double kEdge = 7;    ///< around an end that can be dragged
constexpr double kRibbon = 11; ///< above and below the middle of the ribbon

template <class Part>
Part part_at(double x, double left, double right) {
    if (right - left < 3 * kEdge) return Part::body;
    if (std::abs(x - left) <= kEdge) return Part::start;
    if (std::abs(x - right) <= kEdge) return Part::end;
    return Part::body;
}

std::optional<Hit> card_at(const Layout& layout, double x, double y) {
    for (const auto& card : layout.cards()) {
        const double top = layout.places()[card.row].top + card.top;
        if (x >= card.left && x <= card.left + card.width && y >= top && y <= top + card.height)
            return MomentHit{card.moment, true, MomentHit::Part::body};
    }
    return std::nullopt;
}

std::optional<Hit> bracket_at(const Layout& layout, std::size_t row, double x, double y) {
    const auto& place = layout.places()[row];
    const double lowest =
        layout.rows()[row].kind == Row::Kind::rest ? place.staff_top : place.staff_top - kAbove;
    const Bracket* best = nullptr;
    for (const auto& b : layout.brackets_on(row)) {
        const double line = lowest - 4 - b.lane * kLane;
        const bool on = y >= line - 10 && y <= line + 7 && x >= b.left - 10 && x <= b.right + kEdge;
        if (on && (!best || b.right - b.left < best->right - best->left)) best = &b;
    }
    if (!best) return std::nullopt;
    auto part = part_at<MomentHit::Part>(x, best->left, best->right);
    if ((part == MomentHit::Part::start && !best->begins) || (part == MomentHit::Part::end && !best->ends))
        part = MomentHit::Part::body;
    return MomentHit{best->moment, false, part};
}

std::optional<Hit> sign_at(const Layout& layout, std::size_t row, double x, double y) {
    const auto& r = layout.rows()[row];
    const double sign = layout.places()[row].staff_top - kSignAbove;
    if (std::abs(y - sign) > kNear + 2) return std::nullopt;
    const project::Mark* best = nullptr;
    double nearest = kNear;
    for (const auto* marks : {&r.breaths, &r.switches})
        for (const auto* mark : *marks) {
            const double off = std::abs(
                std::clamp(layout.x_of(row, mark->span().middle()), kGutter - 4, layout.right_edge() - 8) -
                x);
            if (off <= nearest) {
                nearest = off;
                best = mark;
            }
        }
    if (!best) return std::nullopt;
    return MarkHit{best};
}

std::optional<Hit> note_at(const Layout& layout, std::size_t row, double x, double y) {
    const double tuning = retuned(layout.source());
    for (const auto* mark : layout.rows()[row].notes) {
        const auto& note = std::get<marks::Note>(mark->what);
        const double left = layout.x_of(row, note.span.start), right = layout.x_of(row, note.span.end);
        if (x < left - 2 || x > right + 2) continue;
        if (std::abs(layout.y_of(row, note.pitch.value() - tuning) - y) > kRibbon) continue;
        return MarkHit{mark, part_at<MarkHit::Part>(x, left, right)};
    }
    return std::nullopt;
}

std::optional<Hit> phrase_at(const Layout& layout, std::size_t row, double x, double y) {
    const auto& r = layout.rows()[row];
    if (!r.phrase || std::abs(y - (layout.places()[row].staff_top - 6)) > 6) return std::nullopt;
    const double left = layout.x_of(row, r.sung.start), right = layout.x_of(row, r.sung.end);
    if (x < left - kEdge || x > right + kEdge) return std::nullopt;
    auto part = part_at<MarkHit::Part>(x, left, right);
    if ((part == MarkHit::Part::start && r.continued) || (part == MarkHit::Part::end && r.goes_on))
        part = MarkHit::Part::body;
    return MarkHit{r.phrase, part};
}

std::optional<Hit> word_at(const Layout& layout, std::size_t row, double x, double y) {
    const auto base = layout.places()[row].words;
    if (!base || y < *base - kSungWord.size || y > *base + kSungWord.size / 2) return std::nullopt;
    for (const auto& word : layout.words_on(row))
        if (x >= word.left - 2 && x <= word.left + word.width + 2) return WordHit{word.word, row};
    return std::nullopt;
}

} // namespace

Hit hit(const Layout& layout, double x, double y) {
    if (layout.rows().empty() || y < 0 || y > layout.height()) return {};
    if (const auto card = card_at(layout, x, y)) return *card;
    if (x > layout.right_edge()) return {};
    const std::size_t row = layout.row_under(y);
    const double inside = y - layout.places()[row].top;
    for (const auto& found : {bracket_at(layout, row, x, inside), sign_at(layout, row, x, inside),
                              note_at(layout, row, x, inside), phrase_at(layout, row, x, inside),
                              word_at(layout, row, x, inside)})
        if (found) return *found;
    return PlaceHit{row, layout.time_at(row, x)};
}

} // namespace luft::sheet
