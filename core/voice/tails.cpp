#include "voice/tails.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace luft::voice {
namespace {

constexpr double kSlowFall = 220;    // dB a second
constexpr double kLeastFall = 12;    // dB; less than this is no fall
constexpr double kRemembers = 2.5;   // s until the memory is 60 dB down
constexpr double kTakesIn = 0.05;    // s
constexpr float kCutUnder = 7;       // dB
constexpr std::size_t kShortest = 8; // frames of a stretch worth looking at

struct Fall {
    std::size_t begin, end; ///< frames, from the top to the end of the stretch
    double drop;            ///< dB
};

/// The fall of level that ends the stretch begin..end: back from its end for as long as the highest level
/// from here on grows by 1 dB or more in 100 ms (tails flutter, so single frames don't count).
Fall fall_of(const std::vector<float>& level, std::size_t begin, std::size_t end) {
    constexpr std::size_t kStep = 10;
    std::vector<float> highest(level.begin() + static_cast<std::ptrdiff_t>(begin),
                               level.begin() + static_cast<std::ptrdiff_t>(end));
    for (std::size_t k = highest.size() - 1; k-- > 0;)
        highest[k] = std::max(highest[k], highest[k + 1]);
    std::size_t top = highest.size() - 1;
    while (top >= kStep && highest[top - kStep] > highest[top] + 1)
        --top;
    return {begin + top, end, highest[top] - level[end - 1]};
}

/// What a long room would still hold of the sound before each frame, as levels: a memory that takes in fast
/// and forgets slowly.
std::vector<float> memory_of(const std::vector<float>& level) {
    const double keeps = std::pow(10.0, -6 * kHop.value() / kRemembers), takes = kHop.value() / kTakesIn;
    std::vector<float> memory;
    double held = 1e-12;
    for (std::size_t i = 0; i < level.size(); ++i) {
        held *= keeps;
        const double before = i == 0 ? 0 : std::pow(10.0, level[i - 1] / 10);
        held = std::max(held, held + takes * (before - held));
        memory.push_back(static_cast<float>(power_level(held).value()));
    }
    return memory;
}

} // namespace

void cut_tails(Curve<Hertz>& f0, const Texture& texture) {
    const std::size_t n = f0.size();
    std::vector<float> raw(n);
    for (std::size_t i = 0; i < n; ++i)
        raw[i] = static_cast<float>(texture.level_at(i).value());
    const std::vector<float> level = signal::running_mean(raw, 2);
    const auto sung = [&](std::size_t i) { return !std::isnan(f0.raw()[i]); };

    std::vector<double> slopes;
    for (std::size_t i = 0; i < n;) {
        if (!sung(i)) {
            ++i;
            continue;
        }
        const std::size_t begin = i;
        while (i < n && sung(i))
            ++i;
        if (i - begin < kShortest) continue;
        const Fall fall = fall_of(level, begin, i);
        if (fall.drop < kLeastFall) continue;
        slopes.push_back(fall.drop / (static_cast<double>(fall.end - fall.begin) * kHop.value()));
    }
    if (slopes.size() < 3 || *signal::median(slopes) > kSlowFall) return;
    std::vector<float> low(n);
    for (std::size_t i = 0; i < n; ++i)
        low[i] = static_cast<float>(texture.low_level_at(i).value());
    const std::vector<float> memory = memory_of(low);
    for (std::size_t i = 0; i < n; ++i)
        if (low[i] < memory[i] - kCutUnder) f0.set(i, std::nullopt);
}

} // namespace luft::voice
