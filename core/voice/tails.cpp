#include "voice/tails.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace luft::voice {
namespace {

constexpr double kSlowFall = 220;    // dB a second
constexpr double kLeastFall = 12;    // dB; less than this is no fall
constexpr float kCutUnder = 8;       // dB
constexpr std::size_t kShortest = 8; // frames of a stretch worth looking at

struct Fall {
    std::size_t begin, end; ///< frames, from the top to the end of the stretch
    double drop;
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

} // namespace

void cut_tails(Curve<Hertz>& f0, const Texture& texture) {
    const std::size_t n = f0.size();
    std::vector<float> raw(n);
    for (std::size_t i = 0; i < n; ++i)
        raw[i] = static_cast<float>(texture.level_at(i).value());
    const std::vector<float> level = signal::running_mean(raw, 2);
    const auto sung = [&](std::size_t i) { return !std::isnan(f0.raw()[i]); };

    std::vector<Fall> falls;
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
        falls.push_back(fall);
        slopes.push_back(fall.drop / (static_cast<double>(fall.end - fall.begin) * kHop.value()));
    }
    if (falls.size() < 3 || *signal::median(slopes) > kSlowFall) return;
    for (const Fall& fall : falls)
        for (std::size_t i = fall.begin; i < fall.end; ++i)
            if (level[i] < level[fall.begin] - kCutUnder) f0.set(i, std::nullopt);
}

} // namespace luft::voice
