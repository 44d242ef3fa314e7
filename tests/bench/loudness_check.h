// The loudness meter on the EBU's own test signals.
#pragma once

namespace luft::bench {

/// Largest distance from the expected reading, in LU.
struct LoudnessErrors {
    double integrated = 0; ///< EBU Tech 3341, cases 1 to 5; tolerance 0.1
    double range = 0;      ///< EBU Tech 3342, cases 1 to 4; tolerance 1
};
LoudnessErrors measure_loudness();

} // namespace luft::bench
