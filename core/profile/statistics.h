// Medians and spreads of a handful of numbers.
#pragma once

#include <optional>
#include <vector>

namespace luft::profile {

/// The value below which the share `p` (0 to 1) of the values lies, by linear interpolation between order
/// statistics (type 7 of Hyndman & Fan 1996, The American Statistician 50(4) 361). None without values;
/// values that are not finite are left out.
std::optional<double> percentile(std::vector<double> values, double p);

inline std::optional<double> median(std::vector<double> values) {
    return percentile(std::move(values), 0.5);
}

/// The value below which the share `p` of the summed weight lies. None without weight.
struct Weighted {
    double value = 0;
    double weight = 0;
};
std::optional<double> weighted_percentile(std::vector<Weighted> values, double p);

/// A straight line through points by least squares.
struct Line {
    double offset = 0;
    double slope = 0;
    [[nodiscard]] double at(double x) const { return offset + slope * x; }
};
/// None with fewer than two points, or when all x are alike.
std::optional<Line> fit_line(const std::vector<double>& x, const std::vector<double>& y);

} // namespace luft::profile
