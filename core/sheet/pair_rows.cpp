#include "sheet/pair_rows.h"

#include "sheet/ribbon.h"
#include "sheet/rows.h"

#include <algorithm>

namespace luft::sheet {
namespace {

using compare::Pair;
using project::MarkKind;

constexpr Seconds kAround{1}; ///< knots so far outside of a row still tell how its ends run

Span whole(const std::vector<std::size_t>& which, const std::vector<const project::Mark*>& phrases) {
    return {phrases.at(which.front())->span().start, phrases.at(which.back())->span().end};
}

/// What one row, or the rows that it is cut into, is made of.
struct Unit {
    std::optional<Span> a, b;
};

std::vector<Unit> units_of(const PairSource& source) {
    const auto phrases_a = of_kind(source.a, MarkKind::phrase),
               phrases_b = of_kind(source.b, MarkKind::phrase);
    std::vector<Unit> out;
    for (const auto& pair : source.counterparts.phrases)
        out.push_back({whole(pair.a, phrases_a), whole(pair.b, phrases_b)});
    for (const std::size_t only : source.counterparts.phrases_only_a)
        out.push_back({phrases_a.at(only)->span(), std::nullopt});
    std::ranges::stable_sort(out, {}, [](const Unit& u) { return u.a->start; });
    for (const std::size_t only : source.counterparts.phrases_only_b) {
        const Span span = phrases_b.at(only)->span();
        const auto next =
            std::ranges::find_if(out, [&](const Unit& u) { return u.b && u.b->start > span.start; });
        out.insert(next, {std::nullopt, span});
    }
    return out;
}

void set_knots(PairRow& row, const Unit& unit, const compare::Alignment& alignment) {
    row.pace = unit.b->length() > Seconds(0) ? unit.a->length() / unit.b->length() : 1;
    for (const auto& stretch : alignment.stretches) {
        if (stretch.a().overlaps(*unit.a)) row.sure = std::min(row.sure, stretch.confidence);
        for (const Pair& knot : stretch.knots) {
            if (knot.a < unit.a->start - kAround || knot.a > unit.a->end + kAround) continue;
            if (row.knots.empty() || (knot.a > row.knots.back().a && knot.b > row.knots.back().b))
                row.knots.push_back(knot);
        }
    }
    if (row.knots.empty()) row.knots = {{unit.a->start, unit.b->start}};
}

PairRow row_of(const Unit& unit, const compare::Alignment& alignment) {
    PairRow row;
    row.a.lacking = !unit.a;
    row.b.lacking = !unit.b;
    if (unit.a) row.a.sung = row.common = *unit.a;
    if (unit.b) row.b.sung = *unit.b;
    if (!unit.a) row.common = *unit.b;
    if (unit.a && unit.b) {
        set_knots(row, unit, alignment);
        row.common.start = std::min(row.common.start, row.to_common(Which::b, unit.b->start));
        row.common.end = std::max(row.common.end, row.to_common(Which::b, unit.b->end));
    }
    return row;
}

/// What of a span lies in another; empty at its start or end where nothing does.
Span within(Span span, Span bounds) {
    const Seconds start = std::clamp(bounds.start, span.start, span.end);
    return {start, std::max(start, std::clamp(bounds.end, span.start, span.end))};
}

void add_cut(std::vector<PairRow>& rows, const PairRow& whole, Seconds longest,
             const std::vector<const project::Mark*>& notes) {
    Span rest = whole.common;
    bool continued = false;
    while (true) {
        PairRow row = whole;
        row.continued = continued;
        row.goes_on = rest.length() > longest;
        row.common = {rest.start, row.goes_on ? cut_of(rest, longest, notes) : rest.end};
        for (const Which which : kBoth)
            if (PairPart& part = row.part(which); !part.lacking)
                part.sung = within(part.sung,
                                   {row.to_own(which, row.common.start), row.to_own(which, row.common.end)});
        rows.push_back(std::move(row));
        if (!rows.back().goes_on) return;
        rest.start = rows.back().common.end;
        continued = true;
    }
}

void place(std::vector<PairRow>& rows, Which which, const profile::Source& source, MarkKind kind,
           std::vector<const project::Mark*> PairPart::*into) {
    for (const auto* mark : of_kind(source, kind)) {
        const auto row = pair_row_of(rows, which, mark->span().middle());
        if (!row) continue;
        const Span sung = rows[*row].part(which).sung;
        // What lies far from every row isn't drawn on the nearest one.
        if (mark->span().end + kLead > sung.start && mark->span().start < sung.end + kAround)
            (rows[*row].part(which).*into).push_back(mark);
    }
}

void fill(std::vector<PairRow>& rows, Which which, const profile::Source& source) {
    place(rows, which, source, MarkKind::note, &PairPart::notes);
    place(rows, which, source, MarkKind::breath, &PairPart::breaths);
    place(rows, which, source, MarkKind::register_switch, &PairPart::switches);
    for (const auto* phrase : of_kind(source, MarkKind::phrase)) // one on several rows stands on each
        for (PairRow& row : rows)
            if (row.part(which).sung.overlaps(phrase->span())) row.part(which).phrases.push_back(phrase);
    for (const auto& word : source.sung_words)
        if (const auto row = pair_row_of(rows, which, word.at)) rows[*row].part(which).words.push_back(&word);
    for (PairRow& row : rows)
        row.part(which).range = range_of(row.part(which).notes, retuned(source));
}

} // namespace

Seconds PairRow::to_common(Which which, Seconds own) const {
    if (which == Which::a || knots.empty()) return own;
    const auto after = std::ranges::upper_bound(knots, own, {}, &Pair::b);
    if (after == knots.begin()) return knots.front().a + (own - knots.front().b) * pace;
    if (after == knots.end()) return knots.back().a + (own - knots.back().b) * pace;
    const Pair &left = *(after - 1), &right = *after;
    return left.a + (right.a - left.a) * ((own - left.b) / (right.b - left.b));
}

Seconds PairRow::to_own(Which which, Seconds at) const {
    if (which == Which::a || knots.empty()) return at;
    const auto after = std::ranges::upper_bound(knots, at, {}, &Pair::a);
    if (after == knots.begin()) return knots.front().b + (at - knots.front().a) / pace;
    if (after == knots.end()) return knots.back().b + (at - knots.back().a) / pace;
    const Pair &left = *(after - 1), &right = *after;
    return left.b + (right.b - left.b) * ((at - left.a) / (right.a - left.a));
}

std::vector<PairRow> pair_rows(const PairSource& source, Seconds longest) {
    const auto notes_a = of_kind(source.a, MarkKind::note), notes_b = of_kind(source.b, MarkKind::note);
    std::vector<PairRow> out;
    for (const Unit& unit : units_of(source))
        add_cut(out, row_of(unit, source.alignment), std::max(longest, Seconds(1)),
                unit.a ? notes_a : notes_b);
    fill(out, Which::a, source.a);
    fill(out, Which::b, source.b);
    return out;
}

std::optional<std::size_t> pair_row_of(const std::vector<PairRow>& rows, Which which, Seconds own) {
    std::optional<std::size_t> best;
    Seconds nearest{0};
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const PairPart& part = rows[i].part(which);
        if (part.lacking || part.sung.length() <= Seconds(0)) continue;
        // Before a row counts less than after one: a breath is taken for what comes.
        const Seconds away = own < part.sung.start  ? std::max(Seconds(0), part.sung.start - own - kLead)
                             : own >= part.sung.end ? own - part.sung.end
                                                    : Seconds(-1);
        if (best && away > nearest) continue;
        best = i;
        nearest = away;
    }
    return best;
}

} // namespace luft::sheet
