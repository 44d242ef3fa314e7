// What a phrase is made of: its notes, its gaps, and how its level is carried to the end.
#pragma once

#include "profile/material.h"

#include <optional>
#include <vector>

namespace luft::profile {

struct SungLine {
    Span span;
    int notes = 0;
    int breaths_inside = 0;   ///< taken while the line goes on
    int holes = 0;            ///< silent gaps longer than kHole
    std::vector<double> gaps; ///< between its notes, seconds
    std::optional<double>
        level_spread; ///< 10th to 90th percentile of its notes' levels, dB; three notes and more
    std::optional<double> end_under; ///< dB by which the last note lies under the median of those before it

    [[nodiscard]] bool broken() const { return breaths_inside > 0 || holes >= 2; }
    [[nodiscard]] bool even() const;
};

/// A gap inside a phrase from here on is a hole in the line (no source; twice a long plosive).
inline constexpr Seconds kHole{0.25};
/// A line whose notes stay within this is even (no source).
inline constexpr Decibels kEvenLine{8};

/// One for each phrase that counts, in order.
std::vector<SungLine> lines_of(const Material& m);

} // namespace luft::profile
