// Pitch: the measures of MIREX audio melody extraction (reference/melody_metric.h), 50 cents, frames of 10
// ms. Our curve gives no guess where it says that nobody sings, so such a frame is a miss in raw pitch too.
#include "bench/score.h"

namespace luft::bench {

void score_pitch(Scores& to, const Truth& truth, const marks::Analysis& said) {
    if (!truth.pitch) return;
    const auto& [hz, known] = *truth.pitch;
    for (std::size_t i = 0; i < hz.size(); ++i) {
        if (!known.empty() && !known[i]) continue;
        const FrameIndex at{static_cast<std::int64_t>(i)};
        const auto there = hz.at(at), answer = said.curves.f0.at(at);
        to.pitch.add(there.value_or(Hertz(0)).value(), answer.value_or(Hertz(0)).value());
        if (!there || !answer) continue;
        const double off = std::abs(interval(*there, *answer).value());
        if (off < reference::MelodyTally::kTolerance) to.cents_off.push_back(off);
    }
}

} // namespace luft::bench
