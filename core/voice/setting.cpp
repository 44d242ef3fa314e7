#include "voice/setting.h"

#include "signal/statistics.h"

#include <algorithm>
#include <vector>

namespace luft::voice {

SettingEvidence weigh_setting(std::span<const float> levels, std::span<const float> aperiodicity,
                              std::span<const float> side_ratio) {
    SettingEvidence e;
    const double loud = signal::quantile(levels, 0.9).value_or(0);
    std::vector<float> dips, sides;
    const auto is_quiet = [&](std::size_t i) { return levels[i] < loud - 25; };
    std::size_t begin = 0, end = levels.size(); // silence before and after the piece says nothing
    while (begin < end && is_quiet(begin))
        ++begin;
    while (end > begin && is_quiet(end - 1))
        --end;
    std::size_t quiet = 0;
    for (std::size_t i = begin; i < end; ++i) {
        if (is_quiet(i)) ++quiet;
        if (levels[i] < loud - 15) continue;
        dips.push_back(aperiodicity[i]);
        sides.push_back(side_ratio[i]);
    }
    e.aperiodicity = signal::median(dips).value_or(1);
    e.side_share = signal::median(sides).value_or(0);
    e.quiet_share = end == begin ? 0 : static_cast<double>(quiet) / static_cast<double>(end - begin);
    return e;
}

Setting find_setting(const SettingEvidence& e) {
    // Each vote is 0 where the two kinds of recording part and 1 a clear step beyond; tuned on the project's
    // own singer and on recorded solo voices, whose pauses take 15 to 30 % of the time.
    const double restless = std::clamp((0.10 - e.quiet_share) / 0.02, -2.0, 2.0);
    const double mixed = std::clamp((e.aperiodicity - 0.10) / 0.05, -2.0, 2.0);
    return restless + mixed > 0.3 ? Setting::accompanied : Setting::alone;
}

} // namespace luft::voice
