// Breaths that only one takes.
#include "base/text.h"
#include "compare/differ.h"
#include "compare/place_words.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace luft::compare {
namespace {

constexpr Confidence kSureBreath{0.7}; // of those, seven in ten are right even with instruments: ear.md
constexpr Seconds kSamePlace{0.5};     // on the common time
constexpr Seconds kAround{0.25};       // has to be sung through on the other side; own value

/// Whether a line begins or ends near: an instrument may be taken for the voice in the pause then.
bool line_ends(const Side& side, Seconds at) {
    return std::ranges::any_of(side.phrases, [at](const marks::Phrase& p) {
        return std::abs((p.span.start - at).value()) <= kSamePlace.value() ||
               std::abs((p.span.end - at).value()) <= kSamePlace.value();
    });
}

struct Lone {
    Span here, there; ///< the breath, and its place on the other side
    Confidence confidence;
};

/// Breaths of one side that the other certainly doesn't take. Where the other pauses as well, it may have
/// breathed unheard.
template <class Carry>
std::vector<Lone> lone_breaths(const Side& here, const Side& there, Carry carry) {
    std::vector<Lone> out;
    for (const marks::Breath& breath : here.breaths) {
        if (breath.confidence < kSureBreath || sings_on(here, breath.span)) continue;
        const auto place = carry(breath.span.middle());
        if (!place) continue;
        const bool same = std::ranges::any_of(there.breaths, [&](const marks::Breath& other) {
            return std::abs((other.span.middle() - *place).value()) <= kSamePlace.value();
        });
        const Span around{*place - kAround, *place + kAround};
        if (!same && sings_on(there, around) && !line_ends(there, *place))
            out.push_back({breath.span, around, breath.confidence});
    }
    return out;
}

/// Index of the pair of phrases in which the time of A lies, -1 outside all.
int pair_at(const Both& both, Seconds a) {
    for (std::size_t i = 0; i < both.pairs.phrases.size(); ++i)
        if (whole_of(both.pairs.phrases[i].a, both.a.phrases).contains(a)) return static_cast<int>(i);
    return -1;
}

void tell(const Both& both, Found& found, DifferenceKind kind, Span a, Span b, double size,
          Confidence confidence, std::string sentence) {
    const Surely sure = surely(both, confidence);
    found.push_back({kind, a, b, size, Unit::times, sure.chance, sure.confidence, std::move(sentence)});
}

void tell_whole(const Both& both, Found& found, int added, int saved) {
    const double chance = sign_test(added, saved);
    if (chance >= kByChance) return;
    found.push_back({added > saved ? DifferenceKind::breath_added : DifferenceKind::breath_saved,
                     {},
                     {},
                     static_cast<double>(added - saved),
                     Unit::times,
                     chance,
                     {1 - chance},
                     both.wording.b + " breathes " + (added > saved ? "more" : "less") + " often than " +
                         inside(both.wording.a) +
                         " does: " + counted(static_cast<std::size_t>(added), "breath") + " added, " +
                         std::to_string(saved) + " saved."});
}

} // namespace

void breath_differences(const Both& both, Found& found) {
    const Wording& w = both.wording;
    const auto in_trust = [&](std::vector<Lone> all, Span Lone::*on_a) {
        std::erase_if(all, [&](const Lone& l) { return !trusted(both, (l.*on_a).middle()); });
        return all;
    };
    const auto added = in_trust(
        lone_breaths(both.b, both.a, [&](Seconds t) { return both.alignment.to_a(t); }), &Lone::there);
    auto saved = in_trust(lone_breaths(both.a, both.b, [&](Seconds t) { return both.alignment.to_b(t); }),
                          &Lone::here);
    tell_whole(both, found, static_cast<int>(added.size()), static_cast<int>(saved.size()));
    for (const Lone& more : added) {
        const int pair = pair_at(both, more.there.middle());
        const auto less = std::ranges::find_if(
            saved, [&](const Lone& l) { return pair >= 0 && pair_at(both, l.here.middle()) == pair; });
        if (less == saved.end()) {
            tell(both, found, DifferenceKind::breath_added, more.there, more.here, 1, more.confidence,
                 w.b + " breathes " + after_text(w, more.there.middle(), more.here.middle()) + " where " +
                     inside(w.a) + " goes on.");
            continue;
        }
        tell(both, found, DifferenceKind::breath_moved, less->here, more.here, 1,
             std::min(more.confidence, less->confidence),
             w.b + " breathes " + after_text(w, more.there.middle(), more.here.middle()) + ", " +
                 inside(w.a) + " breathes " + after_text(w, less->here.middle(), less->there.middle()) + ".");
        saved.erase(less);
    }
    for (const Lone& less : saved)
        tell(both, found, DifferenceKind::breath_saved, less.here, less.there, -1, less.confidence,
             w.b + " goes on " + after_text(w, less.here.middle(), less.there.middle()) + " where " +
                 inside(w.a) + " breathes.");
}

} // namespace luft::compare
