// Two performances compared, with all that the page of both shows.
#pragma once

#include "base/progress.h"
#include "compare/comparison.h"
#include "profile/profile.h"
#include "project/project.h"
#include "sheet/pair_rows.h"

#include <cstdint>
#include <memory>
#include <string>

namespace luft::desk {

/// Never changed once made, so that threads can share it.
struct Matched {
    compare::Comparison comparison;
    profile::Source a, b;    ///< as they were when it was made
    std::uint64_t stamp = 0; ///< see stamp_of
    std::string note;        ///< what it had to do without, in a sentence; empty for nothing

    [[nodiscard]] sheet::PairSource pair(std::vector<compare::Pair> pins) const {
        return {a, b, comparison.alignment, comparison.counterparts, comparison.differences, std::move(pins)};
    }
};

/// Compares two performances, through the coach's pins. What sounds beside the voices is heard from the
/// recordings, unless `before` has heard it; where a recording is missing or broken, the singing alone has to
/// do, and `note` says so. Throws Error(bad_request) when one hasn't been listened to or pins lie outside,
/// Stopped.
std::shared_ptr<const Matched> match(const project::Project& project, project::PerformanceId a,
                                     project::PerformanceId b, const Progress& progress = {},
                                     const Matched* before = nullptr);

/// Another number whenever something has changed that a comparison is made from: marks, pins, words,
/// labels, recordings.
std::uint64_t stamp_of(const project::Project& project, project::PerformanceId a, project::PerformanceId b);

} // namespace luft::desk
