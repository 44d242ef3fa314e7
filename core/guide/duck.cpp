#include "guide/duck.h"

#include <algorithm>

namespace luft::guide {

Duck::Duck(const script::CueSheet& sheet, const script::Segment& segment, const Clock& clock)
    : down_(kDuckDown.value() * clock.sample_rate().per_second),
      up_(kDuckUp.value() * clock.sample_rate().per_second) {
    for (const script::AsideCue& a : sheet.asides)
        if (segment.programme_start <= a.programme_start && a.programme_start < segment.programme_end)
            passages_.push_back({clock.sample(a.programme_start), clock.sample(a.programme_end)});
}

/// From 0, as it is, to 1, all the way down.
double Duck::depth(std::int64_t sample) const {
    double most = 0;
    for (const Passage& p : passages_) {
        double d = 1;
        if (sample < p.from) d = 1 - static_cast<double>(p.from - sample) / down_;
        if (sample >= p.to) d = 1 - static_cast<double>(sample - p.to) / up_;
        most = std::max(most, d);
    }
    return most;
}

void Duck::lower(std::span<float> stereo, std::int64_t first) const {
    if (passages_.empty()) return;
    for (std::size_t i = 0; i + 1 < stereo.size(); i += 2) {
        const double d = depth(first + static_cast<std::int64_t>(i / 2));
        if (d <= 0) continue;
        const auto gain = static_cast<float>(amplitude_of(kDuck * d));
        stereo[i] *= gain;
        stereo[i + 1] *= gain;
    }
}

} // namespace luft::guide
