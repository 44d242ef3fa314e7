// How notes begin and end.
#include "compare/differ.h"
#include "compare/place_words.h"

#include <algorithm>

namespace luft::compare {
namespace {

const char* name(marks::OnsetKind kind) {
    return kind == marks::OnsetKind::glottal   ? "with a glottal onset"
           : kind == marks::OnsetKind::breathy ? "with a breathy onset"
                                               : "with a balanced onset";
}

const char* name(marks::OffsetKind kind) {
    return kind == marks::OffsetKind::clean     ? "cleanly"
           : kind == marks::OffsetKind::breathy ? "in breath"
                                                : "trailing off";
}

/// From here on two hearings of one note were hardly ever apart (ear_errors.cpp). An offset is told at 1 in
/// 50: no confidence makes the ear surer of one.
constexpr Confidence kSureOnset{0.8}, kSureOffset{0.9};
constexpr double kByChanceOfKinds = 0.02;

template <class Edge>
void compare_edges(const Both& both, Found& found, const NotePair& pair, const Edge& a, const Edge& b,
                   DifferenceKind kind, const char* verb, Confidence needed, double chance) {
    const Confidence least = std::min(a.confidence, b.confidence);
    if (a.kind == b.kind || least < needed || chance > kByChanceOfKinds) return;
    const Span at = both.note_a(pair).span;
    found.push_back({kind,
                     at,
                     both.note_b(pair).span,
                     1,
                     Unit::times,
                     chance,
                     {a.confidence.value * b.confidence.value},
                     both.wording.b + verb + on_text(both.wording, at, both.note_b(pair).span) + " " +
                         name(b.kind) + ", " + inside(both.wording.a) + " " + name(a.kind) + "."});
}

} // namespace

void edge_differences(const Both& both, Found& found) {
    for (const NotePair& p : both.pairs.notes) {
        if (!sure(both, p)) continue;
        const marks::Note &a = both.note_a(p), &b = both.note_b(p);
        compare_edges(both, found, p, a.onset, b.onset, DifferenceKind::onset, " begins ", kSureOnset,
                      both.error.onset);
        compare_edges(both, found, p, a.offset, b.offset, DifferenceKind::offset, " ends the note ",
                      kSureOffset, both.error.offset);
    }
}

} // namespace luft::compare
