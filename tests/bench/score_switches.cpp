// Register switches: within 0.15 s and in the right direction (the design's figure; own choice). One between
// two phrases is neither wanted nor held against: nothing of the change is heard.
#include "bench/score.h"

namespace luft::bench {

void score_switches(Scores& to, const Truth& truth, const marks::Analysis& said) {
    if (!truth.switches) return;
    std::vector<TrueSwitch> there, between;
    for (const TrueSwitch& s : *truth.switches)
        (s.between_phrases ? between : there).push_back(s);
    const auto near = [](const TrueSwitch& t, const marks::Switch& s, double within) {
        return std::abs((t.time - s.time).value()) <= within && t.from == s.from && t.to == s.to;
    };
    const auto matched =
        reference::match(there.size(), said.switches.size(), [&](std::size_t t, std::size_t s) {
            return near(there[t], said.switches[s], 0.15);
        });
    reference::Score score = reference::score_of(matched, said.switches.size());
    for (std::size_t s = 0; s < said.switches.size(); ++s) {
        const marks::Switch& w = said.switches[s];
        const bool hit = std::ranges::count(matched, static_cast<int>(s)) > 0;
        if (!hit && std::ranges::any_of(between, [&](auto& t) { return near(t, w, 0.5); }))
            --score.said;
        else
            to.calibration["switch"].add(w.confidence, hit);
    }
    to.switches += score;
}

} // namespace luft::bench
