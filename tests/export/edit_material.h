// Programmes for the formats of an edit.
#pragma once

#include "export/cue_material.h"

namespace luft::exports::testing {

/// The nasty programme, as a video at a rate; its recording lies in a folder with spaces.
inline script::Source edit_source(std::int64_t rate_num, std::int64_t rate_den) {
    script::Source s = cue_source();
    s.settings.frame_rate_num = rate_num;
    s.settings.frame_rate_den = rate_den;
    s.performance.facts.has_video = true;
    s.performance.media.path = "my takes/Häuser & \"Co\".mp4";
    return s;
}

/// Stops after so many frames of recording at 30000/1001, each of so many frames.
inline script::Source halts(const std::vector<std::pair<std::int64_t, std::int64_t>>& at_and_length) {
    script::Source s = edit_source(30000, 1001);
    s.performance.facts.duration = Seconds(4000);
    s.items.clear();
    for (const auto& [at, length] : at_and_length) {
        auto stop = script::testing::item(static_cast<std::int64_t>(s.items.size()) + 1,
                                          project::ScriptItemKind::stop, 0, "here");
        stop.at = Seconds(static_cast<double>(at) * 1001 / 30000);
        stop.rehearsed =
            Seconds((static_cast<double>(length) - 0.5) * 1001 / 30000); // rounded up to whole frames
        s.items.push_back(stop);
    }
    return s;
}

/// The same, whose first stop quotes 3 s of another performance at half speed; that one runs at 23.976.
inline script::Source quoting_source(std::int64_t rate_num, std::int64_t rate_den) {
    script::Source s = edit_source(rate_num, rate_den);
    s.others = script::testing::compared({}).others;
    auto& facts = s.others[0].performance.facts;
    facts.has_video = true;
    facts.frame_rate_num = 24000;
    facts.frame_rate_den = 1001;
    s.items[1].quote = project::Quote{{2}, {Seconds(10), Seconds(13)}};
    return s;
}

/// 23.976, 25, 29.97 drop-frame and 59.94 drop-frame.
inline const std::vector<std::pair<std::int64_t, std::int64_t>> kRates = {
    {24000, 1001}, {25, 1}, {30000, 1001}, {60000, 1001}};

} // namespace luft::exports::testing
