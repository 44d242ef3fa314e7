#include "voice/tails.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace luft::voice {
namespace {

constexpr double kRemembers = 2.5;   // s until the memory is 60 dB down
constexpr double kTakesIn = 0.05;    // s
constexpr float kCutUnder = 7;       // dB under the memory: a tail
constexpr float kGone = 20;          // dB under the memory: nothing rings on
constexpr float kBack = 4;           // dB under the memory: the next tone sounds
constexpr float kFell = 14;          // dB under the memory that a fall reaches; a tone's own swell has less
constexpr std::size_t kSlow = 12;    // frames that a fall takes at least when the next tone cuts it short
constexpr double kReverberant = 8.5; // frames

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

/// Whether sound dies slowly here: the middle time from 7 to 20 dB under the memory.
bool reverberant(const std::vector<float>& level, const std::vector<float>& memory) {
    const double loud = signal::quantile(level, 0.9).value_or(0);
    const auto under = [&](std::size_t i) { return memory[i] - level[i]; };
    std::vector<double> times;
    for (std::size_t i = 1; i < level.size(); ++i) {
        if (under(i) <= kCutUnder || under(i - 1) > kCutUnder || memory[i] < loud - 20) continue;
        std::size_t end = i;
        float deepest = 0;
        while (end < level.size() && under(end) < kGone && under(end) > kBack)
            deepest = std::max(deepest, under(end++));
        const bool gone = end < level.size() && under(end) >= kGone;
        if (gone || (end - i >= kSlow && deepest > kFell)) times.push_back(static_cast<double>(end - i));
        i = std::max(end, i + 1) - 1;
    }
    return times.size() >= 3 && *signal::median(times) > kReverberant;
}

} // namespace

void cut_tails(Curve<Hertz>& f0, const Texture& texture) {
    std::vector<float> low;
    for (std::size_t i = 0; i < f0.size(); ++i)
        low.push_back(static_cast<float>(texture.low_level_at(i).value()));
    const std::vector<float> memory = memory_of(low);
    if (!reverberant(low, memory)) return;
    for (std::size_t i = 0; i < f0.size(); ++i)
        if (low[i] < memory[i] - kCutUnder) f0.set(i, std::nullopt);
}

} // namespace luft::voice
