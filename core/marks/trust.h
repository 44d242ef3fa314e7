// What confidence among instruments is worth.
#pragma once

#include "marks/listen.h"

#include <span>

namespace luft::marks {

/// Of the marks given the confidence `said`, the share that was right.
struct Worth {
    double said = 0, right = 0;
};

/// `said` on the straight lines between the points, which rise in both; beyond the first and the last it
/// stays as they are.
Confidence worth_of(Confidence said, std::span<const Worth> points);

/// Sets the confidence of notes, breaths and phrases of an accompanied recording to what it turned out to be
/// worth: isotonic regression (pool adjacent violators, Barlow et al. 1972; for confidence Zadrozny & Elkan
/// 2002) on the benchmark's groups with instruments, seeds 1024 to 1039, thinned out to a few points. The
/// order of marks of a kind stays.
void set_confidence_right(Analysis& analysis);

} // namespace luft::marks
