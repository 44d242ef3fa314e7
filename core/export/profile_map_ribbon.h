// The ribbon of one line of the phrase map, as path data.
#pragma once

#include "export/profile_map_lines.h"
#include "sheet/ribbon.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace luft::exports {

/// One piece of ribbon in one register.
struct RibbonPath {
    std::string path;
    std::optional<marks::Register> sung_in;
};

/// Where time and pitch fall on the picture.
struct Place {
    std::function<double(Seconds)> x;
    std::function<double(double midi)> y;
    double least = 1.4, most = 6.5; ///< thickness of the softest and the loudest sound, in units
};

std::vector<RibbonPath> ribbon_paths(const profile::Source& source, const MapLine& line, const Place& place,
                                     sheet::LevelRange levels);

} // namespace luft::exports
