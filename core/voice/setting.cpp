#include "voice/setting.h"

#include "signal/statistics.h"

#include <algorithm>
#include <vector>

namespace luft::voice {

SettingEvidence weigh_setting(std::span<const float> levels, std::span<const float> aperiodicity,
                              std::span<const float> side_ratio, std::span<const float> tonality) {
    SettingEvidence e;
    const double loud = signal::quantile(levels, 0.9).value_or(0);
    std::vector<float> dips, sides, tones, rests;
    const auto is_quiet = [&](std::size_t i) { return levels[i] < loud - 25; };
    std::size_t begin = 0, end = levels.size(); // silence before and after the piece says nothing
    while (begin < end && is_quiet(begin))
        ++begin;
    while (end > begin && is_quiet(end - 1))
        --end;
    std::size_t quiet = 0;
    for (std::size_t i = begin; i < end; ++i) {
        if (is_quiet(i)) ++quiet;
        if (levels[i] < loud - 12) rests.push_back(tonality[i]);
        if (levels[i] < loud - 15) continue;
        tones.push_back(tonality[i]);
        dips.push_back(aperiodicity[i]);
        sides.push_back(side_ratio[i]);
    }
    e.aperiodicity = signal::median(dips).value_or(1);
    e.side_share = signal::median(sides).value_or(0);
    e.quiet_share = end == begin ? 0 : static_cast<double>(quiet) / static_cast<double>(end - begin);
    e.floor = signal::quantile(levels.subspan(begin, end - begin), 0.05).value_or(loud) - loud;
    e.tones_in_rests = signal::quantile(rests, 0.1).value_or(e.tones_in_rests);
    e.tones = signal::median(tones).value_or(e.tones);
    return e;
}

Setting find_setting(const SettingEvidence& e) {
    constexpr double kNoise = 4.5; // dB; noise has 2.5, singing and playing 8 and more
    if (e.tones < kNoise) return Setting::alone;
    // Each vote is 0 where the two kinds of recording part and 1 a clear step beyond.
    const auto vote = [](double x) { return std::clamp(x, -2.0, 2.0); };
    const double restless = vote((0.10 - e.quiet_share) / 0.02);
    const double mixed = vote((e.aperiodicity - 0.10) / 0.05);
    const double goes_on = vote((e.floor + 23) / 3);
    // A room's tail has tones too, so that they say less than their absence.
    const double tuneful = std::min(vote((e.tones_in_rests - 3.8) / 0.5), 0.5);
    return restless + mixed + goes_on + tuneful > 0.5 ? Setting::accompanied : Setting::alone;
}

} // namespace luft::voice
