// How single notes are reached and held: scoops, drift, cracks.
#include "base/text.h"
#include "compare/colour.h"
#include "compare/differ.h"
#include "compare/place_words.h"

#include <cmath>
#include <cstdlib>

namespace luft::compare {
namespace {

// Own values: what a teacher would speak of.
constexpr Cents kLeastScoop{50}, kLeastDrift{30};
constexpr Seconds kHeld{0.7};
/// A crack is told when one note breaks by a dip of this depth and the other has none of half that.
constexpr Decibels kPlainDip{6}, kSmooth{3};

std::string below(Cents cents) {
    return fixed(std::abs(cents.value()), 0) + " cents below";
}

std::string moves(Cents drift) {
    return std::abs(drift.value()) < 10 ? std::string("stays on it")
                                        : std::string(drift.value() > 0 ? "rises" : "sinks") + " by " +
                                              fixed(std::abs(drift.value()), 0) + " cents";
}

void tell(const Both& both, Found& found, const NotePair& p, DifferenceKind kind, Cents size, Cents error,
          Cents least, const std::string& sentence) {
    const auto confidence = beyond_error(size.value(), error.value(), least.value());
    if (!confidence) return;
    found.push_back({kind,
                     both.note_a(p).span,
                     both.note_b(p).span,
                     size.value(),
                     Unit::cents,
                     error.value(),
                     {confidence->value * of_both(both, p).value},
                     sentence});
}

/// Where one has none, its pitch has to show that it has none: the ear misses one scoop in five.
void scoop(const Both& both, Found& found, const NotePair& p, int& more, int& less) {
    const marks::Note &a = both.note_a(p), &b = both.note_b(p);
    if (!a.scoop && (!b.scoop || !begins_on_pitch(both.a, a))) return;
    if (!b.scoop && !begins_on_pitch(both.b, b)) return;
    more += b.scoop && !a.scoop, less += a.scoop && !b.scoop;
    const Cents of_a = a.scoop.value_or(Cents(0)), of_b = b.scoop.value_or(Cents(0));
    const Wording& w = both.wording;
    const std::string where = on_text(w, a.span, b.span);
    tell(both, found, p, DifferenceKind::scoop, of_b - of_a, both.error.scoop, kLeastScoop,
         !a.scoop ? w.b + " reaches the note " + where + " from " + below(of_b) + ", " + inside(w.a) +
                        " begins it on its pitch."
         : !b.scoop ? w.b + " begins the note " + where + " on its pitch, " + inside(w.a) +
                          " reaches it from " + below(of_a) + "."
                    : w.b + " reaches the note " + where + " from " + below(of_b) + ", " + inside(w.a) +
                          " from " + below(of_a) + ".");
}

void drift(const Both& both, Found& found, const NotePair& p) {
    const marks::Note &a = both.note_a(p), &b = both.note_b(p);
    if (!both.error.colours || std::min(a.span.length(), b.span.length()) < kHeld) return;
    const Wording& w = both.wording;
    tell(both, found, p, DifferenceKind::drift, b.drift - a.drift, both.error.drift, kLeastDrift,
         w.b + " " + moves(b.drift) + " through the note " + on_text(w, a.span, b.span) + ", " + inside(w.a) +
             " " + moves(a.drift) + ".");
}

void crack(const Both& both, Found& found, const NotePair& p) {
    if (both.error.crack >= kByChance) return;
    const marks::Note &a = both.note_a(p), &b = both.note_b(p);
    const auto in_a = deepest_dip(both.a, a.span), in_b = deepest_dip(both.b, b.span);
    if (!in_a || !in_b || in_a->broken == in_b->broken) return;
    const Dip &more = in_b->broken ? *in_b : *in_a, &less = in_b->broken ? *in_a : *in_b;
    if (more.depth < kPlainDip || less.depth > kSmooth) return;
    const Wording& w = both.wording;
    const std::string where = on_text(w, a.span, b.span);
    found.push_back({DifferenceKind::crack,
                     a.span,
                     b.span,
                     in_b->broken ? 1.0 : -1.0,
                     Unit::times,
                     both.error.crack,
                     {(1 - both.error.crack) * of_both(both, p).value},
                     in_b->broken
                         ? w.b + "'s voice cracks " + where + ", " + inside(w.a) + " holds it whole."
                         : w.b + " holds the note " + where + " whole, where " + inside(w.a) + " cracks."});
}

} // namespace

void note_manner_differences(const Both& both, Found& found) {
    int more = 0, less = 0;
    for (const NotePair& p : both.pairs.notes) {
        if (!sure(both, p) || !cut_alike(both, p) || by_octaves(p.apart)) continue;
        scoop(both, found, p, more, less);
        drift(both, found, p);
        crack(both, found, p);
    }
    const double chance = sign_test(more, less);
    if (chance < kByChance)
        found.push_back({DifferenceKind::scoop,
                         {},
                         {},
                         static_cast<double>(more - less),
                         Unit::times,
                         chance,
                         {1 - chance},
                         both.wording.b + " reaches notes from below " + (more > less ? "more" : "less") +
                             " often than " + inside(both.wording.a) + ": " +
                             counted(static_cast<std::size_t>(more), "note") + " that " +
                             inside(both.wording.a) + " begins on pitch, " + std::to_string(less) +
                             " the other way."});
}

} // namespace luft::compare
