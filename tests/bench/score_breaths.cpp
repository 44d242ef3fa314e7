// Breaths: matched where they overlap or their middles are within 0.2 s of each other. Own rule: the edges of
// a breath are soft, and a stop is set by its middle.
#include "bench/score.h"

namespace luft::bench {
namespace {

bool same(Span a, Span b) {
    return a.overlaps(b) || std::abs((a.middle() - b.middle()).value()) <= 0.2;
}

} // namespace

void score_breaths(Scores& to, const Truth& truth, const marks::Analysis& said) {
    if (!truth.breaths) return;
    std::vector<TrueBreath> there, doubtful;
    for (const TrueBreath& b : *truth.breaths)
        (b.doubtful ? doubtful : there).push_back(b);
    const auto matched =
        reference::match(there.size(), said.breaths.size(), [&](std::size_t t, std::size_t s) {
            return same(there[t].span, said.breaths[s].span);
        });
    double claimed = 0, audible = 0, audible_hits = 0;
    for (std::size_t s = 0; s < said.breaths.size(); ++s) {
        const bool hit = std::ranges::count(matched, static_cast<int>(s)) > 0;
        if (!hit &&
            std::ranges::any_of(doubtful, [&](auto& b) { return same(b.span, said.breaths[s].span); }))
            continue;
        ++claimed;
        to.calibration["breath"].add(said.breaths[s].confidence, hit);
    }
    for (std::size_t t = 0; t < there.size(); ++t)
        if (there[t].audible) ++audible, audible_hits += matched[t] >= 0 ? 1 : 0;
    reference::Score score = reference::score_of(matched, said.breaths.size());
    score.said = claimed;
    to.breaths += score;
    to.audible_breaths += {audible_hits, 0, audible};
}

} // namespace luft::bench
