#include "export/profile_map_ribbon.h"

#include "export/svg.h"

namespace luft::exports {
namespace {

std::string outline(const std::vector<sheet::RibbonPoint>& points, const Place& place) {
    std::string path;
    const auto to = [&](const sheet::RibbonPoint& p, double side) {
        const double half = (place.least + p.loud * (place.most - place.least)) / 2;
        path += (path.empty() ? "M" : "L") + svg_number(place.x(p.time)) + " " +
                svg_number(place.y(p.pitch) + side * half);
    };
    for (const auto& p : points)
        to(p, -1);
    for (auto p = points.rbegin(); p != points.rend(); ++p)
        to(*p, 1);
    return path + "Z";
}

} // namespace

std::vector<RibbonPath> ribbon_paths(const profile::Source& source, const MapLine& line, const Place& place,
                                     sheet::LevelRange levels) {
    std::vector<RibbonPath> out;
    for (const auto& piece : sheet::ribbon(source, line.span, line.notes, line.low, line.high, levels))
        out.push_back({outline(piece.points, place), piece.sung_in});
    return out;
}

} // namespace luft::exports
