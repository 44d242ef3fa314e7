// The ribbon of one line of the phrase map.
#pragma once

#include "export/profile_map_lines.h"

#include <functional>
#include <string>
#include <vector>

namespace luft::exports {

/// One piece of ribbon in one register, as path data.
struct RibbonPiece {
    std::string path;
    std::optional<marks::Register> sung_in;
};

/// Where time and pitch fall on the picture.
struct Place {
    std::function<double(Seconds)> x;
    std::function<double(double midi)> y;
    double least = 1.4, most = 6.5; ///< thickness of the softest and the loudest sound, in units
    Decibels soft, loud;            ///< the levels that have them
};

/// From the pitch and level curves; from the notes alone where there is no pitch curve.
std::vector<RibbonPiece> ribbon(const profile::Source& source, const MapLine& line, const Place& place);

/// The levels between which thickness changes: 10th and 95th percentile of the notes' levels, at least 6 dB
/// apart.
std::pair<Decibels, Decibels> level_range(const profile::Source& source);

} // namespace luft::exports
