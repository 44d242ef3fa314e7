// What a piece of work costs: processor time of this process, whatever else the machine does.
#pragma once

#include "base/units.h"

#include <algorithm>
#include <ctime>
#include <functional>
#include <vector>

namespace luft::load {

inline Seconds processor_time() {
    timespec t{};
    ::clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return Seconds(static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_nsec) / 1e9);
}

inline Seconds cost_of(const std::function<void()>& work) {
    const Seconds began = processor_time();
    work();
    return processor_time() - began;
}

/// Median of several.
inline Seconds median(std::vector<Seconds> costs) {
    std::ranges::sort(costs);
    return costs.at(costs.size() / 2);
}

} // namespace luft::load
