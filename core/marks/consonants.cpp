#include "marks/consonants.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

/// Level of the middle of the spectrum, where nasals and closures make a hole.
float middle_bands(const voice::Hearing& hearing, std::size_t i) {
    const auto& b = hearing.texture.bands()[i];
    double sum = 0;
    for (std::size_t k = 3; k <= 6; ++k)
        sum += std::pow(10.0, b[k] / 10); // 800 Hz to 4.5 kHz
    return static_cast<float>(power_level(sum).value());
}

/// Takes out rows of three and more dips at the pace of a vibrato: partials that swing in and out of a
/// formant.
void leave_out_swings(std::vector<std::size_t>& dips) {
    constexpr std::size_t kSlowest = 28, kUneven = 5; // frames
    for (std::size_t first = 0; first < dips.size();) {
        std::size_t last = first;
        const auto pace = [&](std::size_t k) { return dips[k + 1] - dips[k]; };
        while (last + 1 < dips.size() && pace(last) <= kSlowest &&
               (last == first ||
                std::max(pace(last), pace(last - 1)) - std::min(pace(last), pace(last - 1)) <= kUneven))
            ++last;
        if (last - first >= 2)
            dips.erase(dips.begin() + static_cast<std::ptrdiff_t>(first),
                       dips.begin() + static_cast<std::ptrdiff_t>(last) + 1);
        else
            first = std::max(last, first + 1);
    }
}

/// Whether the tone itself stops in a dip, as before a hard start, rather than going on as a hum.
bool tone_stops(const voice::Hearing& hearing, std::size_t closes, std::size_t opens) {
    constexpr double kStop =
        10; // dB; tuned on songs of the project's singer and festival, seeds 1000 to 1015
    const auto low = [&](std::size_t i) { return hearing.texture.low_level_at(i).value(); };
    double lowest = low(closes);
    for (std::size_t i = closes; i <= opens; ++i)
        lowest = std::min(lowest, low(i));
    return std::min(low(closes > 4 ? closes - 4 : 0), low(opens + 4)) - lowest > kStop;
}

} // namespace

std::vector<std::size_t> consonants_within(const voice::Hearing& hearing, const Run& run) {
    constexpr float kDepth = 9;        // dB under both sides
    constexpr std::size_t kReach = 12; // frames to either side
    std::vector<std::size_t> found;
    std::vector<float> level;
    for (std::size_t i = run.begin; i < run.end; ++i)
        level.push_back(middle_bands(hearing, i));
    for (std::size_t i = kReach; i + kReach < level.size(); ++i) {
        const auto window = std::span<const float>(level).subspan(i - kReach, 2 * kReach + 1);
        if (level[i] > *std::ranges::min_element(window)) continue;
        const float before = *std::max_element(window.begin(), window.begin() + kReach);
        const float after = *std::max_element(window.begin() + kReach, window.end());
        if (std::min(before, after) - level[i] < kDepth) continue;
        std::size_t closes = i, opens = i;
        while (closes > 0 && level[closes - 1] < level[i] + (before - level[i]) / 2)
            --closes;
        while (opens + 1 < level.size() && level[opens] < level[i] + (after - level[i]) / 2)
            ++opens;
        found.push_back(tone_stops(hearing, run.begin + closes, run.begin + opens) ? opens : closes);
        i += kReach;
    }
    leave_out_swings(found);
    return found;
}

} // namespace luft::marks
