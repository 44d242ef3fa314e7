// The figures to reach, beside what was measured.
#pragma once

#include "bench/loudness_check.h"
#include "bench/speed.h"
#include "bench/tables.h"

#include <optional>

namespace luft::bench {

/// Whatever wasn't measured in this run is empty.
struct Machine {
    std::optional<Speed> solo, accompanied;
    std::optional<double> hour_megabytes;
    std::optional<LoudnessErrors> loudness;
};

/// Every row of the design's section "Figures to reach", in its order: target, measured, met or missed.
Table design_table(const std::vector<GroupScores>& groups, const Machine& machine);

/// Time and memory.
Table speed_table(const Machine& machine);

} // namespace luft::bench
