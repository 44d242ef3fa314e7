// Phrases that one joins or breaks.
#include "compare/differ.h"
#include "compare/place_words.h"

#include <algorithm>
#include <cmath>

namespace luft::compare {
namespace {

constexpr Confidence kSurePhrase{0.7};
constexpr Seconds kSamePlace{0.5}; // as for breaths
constexpr Seconds kAround{0.25};

struct Break {
    Span here, there; ///< the pause between two phrases, and its place on the other side
    Confidence confidence;
};

/// Breaks of one side, inside the phrases given, that the other sings through.
template <class Carry>
std::vector<Break> lone_breaks(const Side& here, const std::vector<std::size_t>& phrases, const Side& there,
                               const std::vector<std::size_t>& other, Carry carry) {
    std::vector<Break> out;
    for (std::size_t i = 1; i < phrases.size(); ++i) {
        const marks::Phrase &left = here.phrases.at(phrases[i - 1]), &right = here.phrases.at(phrases[i]);
        const Span pause{left.span.end, right.span.start};
        Confidence confidence = std::min(left.confidence, right.confidence);
        for (const marks::Breath& breath : here.breaths) // a breath in the pause makes sure of it
            if (pause.contains(breath.span.middle())) confidence = std::max(confidence, breath.confidence);
        if (confidence < kSurePhrase || pause.length() < kPause) continue;
        const auto place = carry(pause.middle());
        if (!place) continue;
        bool same = false;
        for (std::size_t k = 1; k < other.size(); ++k) {
            const Seconds middle =
                (there.phrases.at(other[k - 1]).span.end + there.phrases.at(other[k]).span.start) / 2;
            same = same || std::abs((middle - *place).value()) <= kSamePlace.value();
        }
        const Span around{*place - kAround, *place + kAround};
        if (!same && sings_on(there, around)) out.push_back({pause, around, confidence});
    }
    return out;
}

} // namespace

void phrase_differences(const Both& both, Found& found) {
    const Wording& w = both.wording;
    for (const PhrasePair& pair : both.pairs.phrases) {
        for (const Break& at :
             lone_breaks(both.a, pair.a, both.b, pair.b, [&](Seconds t) { return both.alignment.to_b(t); }))
            if (trusted(both, at.here.middle()))
                found.push_back({DifferenceKind::phrase_joined, at.here, at.there, -1, Unit::times,
                                 surely(both, at.confidence).chance, surely(both, at.confidence).confidence,
                                 w.b + " makes one line of what " + inside(w.a) + " sings as two, " +
                                     after_text(w, at.here.middle(), at.there.middle()) + "."});
        for (const Break& at :
             lone_breaks(both.b, pair.b, both.a, pair.a, [&](Seconds t) { return both.alignment.to_a(t); }))
            if (trusted(both, at.there.middle()))
                found.push_back({DifferenceKind::phrase_broken, at.there, at.here, 1, Unit::times,
                                 surely(both, at.confidence).chance, surely(both, at.confidence).confidence,
                                 w.b + " breaks the line " +
                                     after_text(w, at.there.middle(), at.here.middle()) + "; " + inside(w.a) +
                                     " sings it as one."});
    }
}

} // namespace luft::compare
