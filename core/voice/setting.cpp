#include "voice/setting.h"

#include "signal/statistics.h"

#include <vector>

namespace luft::voice {

SettingEvidence weigh_setting(std::span<const float> levels, std::span<const float> aperiodicity,
                              std::span<const float> side_ratio) {
    SettingEvidence e;
    const double loud = signal::quantile(levels, 0.9).value_or(0);
    std::vector<float> dips, sides;
    std::size_t quiet = 0;
    for (std::size_t i = 0; i < levels.size(); ++i) {
        if (levels[i] < loud - 35) ++quiet;
        if (levels[i] < loud - 15) continue;
        dips.push_back(aperiodicity[i]);
        sides.push_back(side_ratio[i]);
    }
    e.aperiodicity = signal::median(dips).value_or(1);
    e.side_share = signal::median(sides).value_or(0);
    e.quiet_share = levels.empty() ? 0 : static_cast<double>(quiet) / static_cast<double>(levels.size());
    return e;
}

Setting find_setting(const SettingEvidence& e) {
    // A score of single votes; each constant is where the two kinds of scene part.
    double score = (e.aperiodicity - 0.10) / 0.05;
    score += e.quiet_share < 0.02 ? 1.5 : -1.0;
    score += e.side_share > 0.02 ? 1.0 : 0.0;
    return score > 0.5 ? Setting::accompanied : Setting::alone;
}

} // namespace luft::voice
