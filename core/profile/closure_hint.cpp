#include "profile/closure_hint.h"

#include "base/text.h"
#include "profile/against_own.h"
#include "profile/thresholds.h"

#include <cmath>

namespace luft::profile {
namespace {

// Borders in dB against the singer's own usual value at that level; no source, to be tuned on marked takes.
// Never against other singers: cepstral peaks of two programs differ by 15 dB on one signal (Skowronski et
// al. 2015), and the first two harmonics don't give the open quotient (Henrich et al. 2001).
constexpr double kLessPeak = -2.5, kMorePeak = 2.0;
constexpr double kMoreFirst = 2.5, kLessFirst = -2.5, kMuchLessFirst = -5.0;
constexpr std::size_t kLeastNotes = 6;

const char* shade_of(double peak, double first) {
    if (peak <= kLessPeak && first >= kMoreFirst) return "breathy";
    if (first <= kMuchLessFirst && peak < kMorePeak) return "pressed";
    if (peak >= kMorePeak && first <= kLessFirst) return "firm";
    return "balanced";
}

std::string over_or_under(double db) {
    return fixed(std::abs(db), 1) + " dB " + (db < 0 ? "under" : "over");
}

} // namespace

double ClosureHint::far() const {
    return std::abs(peak) + std::abs(first);
}

std::string ClosureHint::words() const {
    return "cepstral peak " + over_or_under(peak) + " and H1-H2 " + over_or_under(first) +
           " what is usual here at that level";
}

std::vector<std::optional<ClosureHint>> closure_hints(const Material& m) {
    const auto peak = levelled(m.notes, [](const SungNote& n) { return n.colour.cpp; });
    const auto first = levelled(m.notes, [](const SungNote& n) { return n.colour.h1h2; });
    std::vector<std::optional<ClosureHint>> out(m.notes.size());
    std::size_t told = 0;
    for (std::size_t i = 0; i < m.notes.size(); ++i)
        if (peak[i] && first[i] && long_enough_for_pitch(m.notes[i])) {
            out[i] = ClosureHint{shade_of(*peak[i], *first[i]), *peak[i], *first[i]};
            ++told;
        }
    if (told < kLeastNotes) out.assign(m.notes.size(), std::nullopt);
    return out;
}

} // namespace luft::profile
