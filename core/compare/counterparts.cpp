#include "compare/counterparts.h"

#include "compare/chain.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace luft::compare {
namespace {

// Own values.
constexpr Seconds kLatestStart{0.5}, kTogether{0.15};
constexpr Seconds kJoined{0.06}; // as in profile/material.h
constexpr double kFourth = 5;    // semitones
constexpr double kOctaveApart = 0.5;
constexpr double kLeastLikeness = 0.35;
constexpr double kLeastShare = 1.0 / 3;

/// A note's span on the other side's time; cut where the alignment ends inside it.
std::optional<Span> carried(const Alignment& alignment, Span s) {
    const auto start = alignment.to_b(s.start), end = alignment.to_b(s.end);
    if (start) return Span{*start, end && *end > *start ? *end : *start + s.length()};
    if (end) return Span{*end - s.length(), *end};
    return std::nullopt;
}

double apart(const marks::Note& a, const marks::Note& b, const Alignment& alignment) {
    return b.pitch.value() - a.pitch.value() - alignment.semitones - alignment.tuning.value() / 100;
}

/// 0 to 1; none when they can't be the same note.
std::optional<double> likeness(const marks::Note& a, Span there, const marks::Note& b,
                               const Alignment& alignment) {
    const Seconds late(std::abs((there.start - b.span.start).value()));
    const Seconds shared = std::min(there.end, b.span.end) - std::max(there.start, b.span.start);
    if (late > kLatestStart || (shared <= Seconds(0) && late > kTogether)) return std::nullopt;
    const double from = std::abs(apart(a, b, alignment)), octaves = std::round(from / 12);
    const double tones = std::abs(from - 12 * octaves) + (octaves > 0 ? kOctaveApart : 0);
    if (tones > kFourth && late > kTogether) return std::nullopt;
    const Seconds either = std::max(there.end, b.span.end) - std::min(there.start, b.span.start);
    const double like = 0.5 * (1 - std::min(1.0, tones / kFourth)) + 0.25 * (1 - late / kLatestStart) +
                        0.25 * std::max(0.0, shared / either);
    return like >= kLeastLikeness ? std::optional(like) : std::nullopt;
}

std::vector<NotePair> pair_notes(const Side& a, const Side& b, const Alignment& alignment) {
    std::vector<Link> links;
    for (std::size_t i = 0; i < a.notes.size(); ++i) {
        const auto there = carried(alignment, a.notes[i].span);
        if (!there) continue;
        const auto from = std::ranges::lower_bound(b.notes, there->start - kLatestStart, {},
                                                   [](const marks::Note& n) { return n.span.start; });
        for (auto n = from; n != b.notes.end() && n->span.start <= there->start + kLatestStart; ++n)
            if (const auto like = likeness(a.notes[i], *there, *n, alignment))
                links.push_back({i, static_cast<std::size_t>(n - b.notes.begin()), *like});
    }
    std::vector<NotePair> out;
    for (const Link& link : heaviest_chain(links, b.notes.size()))
        out.push_back({link.a, link.b, Cents(100 * apart(a.notes[link.a], b.notes[link.b], alignment))});
    return out;
}

/// The phrase that a note begins in, -1 outside all.
int phrase_of(const marks::Note& note, const std::vector<marks::Phrase>& phrases) {
    for (std::size_t p = 0; p < phrases.size(); ++p)
        if (phrases[p].span.overlaps(note.span) && phrases[p].span.contains(note.span.middle()))
            return static_cast<int>(p);
    return -1;
}

std::vector<int> phrases_of(const Side& side) {
    std::vector<int> out;
    for (const marks::Note& n : side.notes)
        out.push_back(phrase_of(n, side.phrases));
    return out;
}

/// Phrases joined by shared notes, each group with all that hang together.
void pair_phrases(Counterparts& out, const Side& a, const Side& b, const std::vector<int>& in_a,
                  const std::vector<int>& in_b) {
    const std::size_t m = a.phrases.size(), n = b.phrases.size();
    std::vector<std::map<std::size_t, int>> shared(m);
    for (const NotePair& p : out.notes)
        if (in_a[p.a] >= 0 && in_b[p.b] >= 0)
            ++shared[static_cast<std::size_t>(in_a[p.a])][static_cast<std::size_t>(in_b[p.b])];
    std::vector<std::size_t> group(m + n); // of A's phrases, then of B's
    for (std::size_t i = 0; i < group.size(); ++i)
        group[i] = i;
    const auto notes_in = [](const std::vector<int>& in, std::size_t p) {
        return std::ranges::count(in, static_cast<int>(p));
    };
    for (std::size_t p = 0; p < m; ++p)
        for (const auto& [q, count] : shared[p]) {
            const auto least = std::min(notes_in(in_a, p), notes_in(in_b, q));
            if (count < kLeastShare * static_cast<double>(least)) continue;
            const std::size_t from = group[m + q], to = group[p];
            std::ranges::replace(group, from, to);
        }
    for (std::size_t p = 0; p < m; ++p) {
        const auto before = group.begin() + static_cast<std::ptrdiff_t>(p);
        if (std::find(group.begin(), before, group[p]) != before) continue; // told with an earlier phrase
        PhrasePair pair;
        for (std::size_t i = 0; i < m; ++i)
            if (group[i] == group[p]) pair.a.push_back(i);
        for (std::size_t i = 0; i < n; ++i)
            if (group[m + i] == group[p]) pair.b.push_back(i);
        if (pair.b.empty())
            out.phrases_only_a.push_back(p);
        else
            out.phrases.push_back(std::move(pair));
    }
    for (std::size_t q = 0; q < n; ++q)
        if (std::find(group.begin(), group.begin() + static_cast<std::ptrdiff_t>(m), group[m + q]) ==
            group.begin() + static_cast<std::ptrdiff_t>(m))
            out.phrases_only_b.push_back(q);
}

/// Whether a note joins a paired one an octave away.
bool slipped(const std::vector<marks::Note>& notes, std::size_t i, const std::set<std::size_t>& paired) {
    const auto joins = [&](std::size_t left, std::size_t right, std::size_t other) {
        const double apart = std::abs((notes[left].pitch - notes[right].pitch).value());
        return notes[right].span.start - notes[left].span.end < kJoined && std::abs(apart - 12) < 1 &&
               paired.contains(other);
    };
    return (i > 0 && joins(i - 1, i, i - 1)) || (i + 1 < notes.size() && joins(i, i + 1, i + 1));
}

void sort_rest(const std::vector<marks::Note>& notes, const std::set<std::size_t>& paired,
               const std::vector<int>& in, const std::vector<std::size_t>& phrases_alone,
               std::vector<std::size_t>& added, std::vector<std::size_t>& alone) {
    for (std::size_t i = 0; i < notes.size(); ++i) {
        if (paired.contains(i)) continue;
        const bool inside = in[i] >= 0 && std::ranges::find(phrases_alone, static_cast<std::size_t>(in[i])) ==
                                              phrases_alone.end();
        (inside && !slipped(notes, i, paired) ? added : alone).push_back(i);
    }
}

} // namespace

Counterparts find_counterparts(const Side& a, const Side& b, const Alignment& alignment) {
    Counterparts out;
    out.notes = pair_notes(a, b, alignment);
    const std::vector<int> in_a = phrases_of(a), in_b = phrases_of(b);
    pair_phrases(out, a, b, in_a, in_b);
    std::set<std::size_t> paired_a, paired_b;
    for (const NotePair& p : out.notes)
        paired_a.insert(p.a), paired_b.insert(p.b);
    sort_rest(a.notes, paired_a, in_a, out.phrases_only_a, out.added_by_a, out.notes_only_a);
    sort_rest(b.notes, paired_b, in_b, out.phrases_only_b, out.added_by_b, out.notes_only_b);
    return out;
}

} // namespace luft::compare
