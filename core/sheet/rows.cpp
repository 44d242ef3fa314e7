#include "sheet/rows.h"

#include "sheet/ribbon.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace luft::sheet {
namespace {

constexpr Seconds kRestBetweenNotes{1};
constexpr Seconds kTail{0.4}; ///< shown after the last note when a long rest follows

struct Sung {
    Span span;
    const project::Mark* phrase = nullptr;
    bool goes_on = false, continued = false;
};

/// Where the singing is: phrases without overlap, else stretches of notes.
std::vector<Sung> sung_stretches(const profile::Source& source,
                                 const std::vector<const project::Mark*>& notes) {
    std::vector<Sung> out;
    for (const auto* phrase : of_kind(source, project::MarkKind::phrase)) {
        Span span = phrase->span();
        if (!out.empty()) span.start = std::max(span.start, out.back().span.end);
        if (span.length() > Seconds(0)) out.push_back({span, phrase});
    }
    // Notes that no phrase covers would be lost from sight. Phrases don't overlap each other here and notes
    // come in order, so that the ones behind a note's start needn't be looked at again.
    const std::vector<Sung> phrases = out;
    auto next = phrases.begin(); // the first phrase that ends after the note starts
    std::vector<Sung> loose;
    for (const auto* note : notes) {
        const Span span = note->span();
        while (next != phrases.end() && next->span.end <= span.start)
            ++next;
        if (next != phrases.end() && next->span.overlaps(span)) continue;
        // A phrase between it and the note before ends by the note's start.
        const bool parted =
            !loose.empty() && next != phrases.begin() && std::prev(next)->span.start >= loose.back().span.end;
        if (!loose.empty() && span.start - loose.back().span.end < kRestBetweenNotes && !parted)
            loose.back().span.end = std::max(loose.back().span.end, span.end);
        else
            loose.push_back({span});
    }
    out.insert(out.end(), loose.begin(), loose.end());
    std::ranges::stable_sort(out, {}, [](const Sung& s) { return s.span.start; });
    return out;
}

std::vector<Sung> fitted(const std::vector<Sung>& all, Seconds longest,
                         const std::vector<const project::Mark*>& notes) {
    std::vector<Sung> out;
    for (Sung rest : all) {
        while (rest.span.length() > longest) {
            Sung part = rest;
            part.span.end = cut_of(rest.span, longest, notes);
            part.goes_on = true;
            out.push_back(part);
            rest.span.start = part.span.end;
            rest.continued = true;
        }
        out.push_back(rest);
    }
    return out;
}

void place(std::vector<Row>& rows, const std::vector<const project::Mark*>& marks,
           std::vector<const project::Mark*> Row::*into, auto time) {
    for (const auto* mark : marks)
        if (!rows.empty()) (rows[row_at(rows, time(*mark))].*into).push_back(mark);
}

Row rest_row(Seconds from, Seconds to) {
    Row row;
    row.kind = Row::Kind::rest;
    row.shown = {from, to};
    row.sung = {to, to};
    return row;
}

} // namespace

std::vector<const marks::Note*> sung_notes(const std::vector<const project::Mark*>& notes) {
    std::vector<const marks::Note*> out;
    for (const auto* mark : notes)
        out.push_back(&std::get<marks::Note>(mark->what));
    return out;
}

std::vector<const project::Mark*> of_kind(const profile::Source& source, project::MarkKind kind) {
    std::vector<const project::Mark*> out;
    for (const auto& mark : source.marks)
        if (mark.kind() == kind && mark.state != project::MarkState::dropped) out.push_back(&mark);
    std::ranges::stable_sort(out, {}, [](const project::Mark* m) { return m->span().start; });
    return out;
}

std::optional<std::pair<double, double>> range_of(const std::vector<const project::Mark*>& notes,
                                                  double tuning) {
    std::optional<std::pair<double, double>> range;
    for (const auto* note : sung_notes(notes)) {
        const double pitch = note->pitch.value() - tuning;
        if (!std::isfinite(pitch)) continue;
        if (!range) range = {pitch, pitch};
        range->first = std::min(range->first, pitch);
        range->second = std::max(range->second, pitch);
    }
    return range;
}

Seconds cut_of(Span span, Seconds longest, const std::vector<const project::Mark*>& notes) {
    Seconds cut = span.start + longest;
    // In order of time: the last one that starts early enough is the one, if it starts late enough.
    const auto after = std::ranges::upper_bound(notes, cut, {},
                                                [](const project::Mark* note) { return note->span().start; });
    if (after != notes.begin())
        if (const Seconds start = (*std::prev(after))->span().start; start > span.start + longest * 0.5)
            cut = start;
    return cut;
}

std::vector<Row> rows(const profile::Source& source, Seconds longest) {
    const Seconds end = std::max(source.performance.facts.duration,
                                 source.listening ? source.listening->duration : Seconds(0));
    const auto notes = of_kind(source, project::MarkKind::note);
    const auto stretches = fitted(sung_stretches(source, notes), std::max(longest, Seconds(1)), notes);
    std::vector<Row> out;
    Seconds reached{0};
    for (std::size_t i = 0; i < stretches.size(); ++i) {
        const Sung& s = stretches[i];
        if (out.empty() && s.span.start > kLead) {
            reached = s.span.start - kLead;
            out.push_back(rest_row(Seconds(0), reached));
        }
        Row row;
        row.phrase = s.phrase;
        row.sung = s.span;
        row.goes_on = s.goes_on;
        row.continued = s.continued;
        const bool last = i + 1 == stretches.size();
        const Seconds next = last ? std::max(end, s.span.end) : stretches[i + 1].span.start;
        const Seconds gap = next - s.span.end;
        // After a real rest the next phrase's breath stands before the phrase, on its row.
        const Seconds lead = last || gap < 2 * kLead ? Seconds(0) : kLead;
        row.shown = {reached, next - lead};
        const bool fits = row.shown.end - row.sung.start <= longest;
        const bool long_rest = gap >= kLongRest || (!fits && gap > 2 * kLead);
        if (long_rest) row.shown.end = s.span.end + kTail;
        reached = row.shown.end;
        out.push_back(std::move(row));
        if (long_rest) {
            out.push_back(rest_row(reached, next - lead));
            reached = next - lead;
        }
    }
    if (out.empty() && end > Seconds(0)) out.push_back(rest_row(Seconds(0), end));
    place(out, notes, &Row::notes, [](const project::Mark& m) { return m.span().middle(); });
    place(out, of_kind(source, project::MarkKind::breath), &Row::breaths,
          [](const project::Mark& m) { return m.span().middle(); });
    place(out, of_kind(source, project::MarkKind::register_switch), &Row::switches,
          [](const project::Mark& m) { return m.span().start; });
    for (const auto& word : source.sung_words)
        if (!out.empty()) out[row_at(out, word.at)].words.push_back(&word);
    const double tuning = retuned(source);
    for (auto& row : out)
        if (const auto range = range_of(row.notes, tuning)) std::tie(row.low, row.high) = *range;
    return out;
}

std::size_t row_at(const std::vector<Row>& rows, Seconds time) {
    const auto after =
        std::ranges::upper_bound(rows, time, {}, [](const Row& row) { return row.shown.start; });
    return after == rows.begin() ? 0 : static_cast<std::size_t>(after - rows.begin()) - 1;
}

} // namespace luft::sheet
