// Register and level, frame by frame.
#include "bench/score.h"

namespace luft::bench {

/// Of songs in two registers the share of sung frames in the right one, where 'none' is wrong; of songs in
/// one register, whether it was split all the same.
void score_registers(Scores& to, const Truth& truth, const marks::Analysis& said) {
    if (!truth.head) return;
    const auto there = truth.head->raw();
    const bool two = std::ranges::any_of(there, [](float h) { return h >= 0.5F; }) &&
                     std::ranges::any_of(there, [](float h) { return h < 0.5F; });
    if (!two) {
        to.split += {said.one_register ? 0.0 : 1.0, 1};
        return;
    }
    for (std::size_t i = 0; i < there.size(); ++i) {
        if (std::isnan(there[i])) continue;
        const auto head = said.curves.head_register.at(FrameIndex{static_cast<std::int64_t>(i)});
        const bool right = head && (head->value() >= 0.5) == (there[i] >= 0.5F);
        to.registers += {right ? 1.0 : 0.0, 1};
    }
}

/// Standard deviation of said minus true level over the frames that both give, down to 30 dB under the
/// loudest: a constant offset is a matter of definition and doesn't count.
void score_level(Scores& to, const Truth& truth, const marks::Analysis& said) {
    if (!truth.level) return;
    double loudest = -200;
    for (const float v : truth.level->raw())
        if (!std::isnan(v)) loudest = std::max(loudest, double(v));
    double count = 0, sum = 0, squares = 0;
    for (std::size_t i = 0; i < truth.level->size(); ++i) {
        const FrameIndex at{static_cast<std::int64_t>(i)};
        const auto there = truth.level->at(at), answer = said.curves.level.at(at);
        if (!there || !answer || there->value() < loudest - 30) continue;
        const double off = (*answer - *there).value();
        ++count, sum += off, squares += off * off;
    }
    if (count < 2) return;
    const double mean = sum / count;
    to.level_spread.push_back(std::sqrt(std::max(0.0, squares / count - mean * mean)));
}

} // namespace luft::bench
