#include "profile/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::profile {

std::optional<double> percentile(std::vector<double> values, double p) {
    std::erase_if(values, [](double v) { return !std::isfinite(v); });
    if (values.empty()) return std::nullopt;
    std::sort(values.begin(), values.end());
    const double place = std::clamp(p, 0.0, 1.0) * static_cast<double>(values.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const auto above = std::min(below + 1, values.size() - 1);
    return std::lerp(values[below], values[above], place - static_cast<double>(below));
}

std::optional<double> weighted_percentile(std::vector<Weighted> values, double p) {
    std::erase_if(values, [](const Weighted& v) { return !std::isfinite(v.value) || !(v.weight > 0); });
    std::sort(values.begin(), values.end(),
              [](const Weighted& a, const Weighted& b) { return a.value < b.value; });
    double total = 0;
    for (const auto& v : values)
        total += v.weight;
    double reached = 0;
    for (const auto& v : values) {
        reached += v.weight;
        if (reached >= p * total) return v.value;
    }
    return values.empty() ? std::nullopt : std::optional(values.back().value);
}

std::optional<Line> fit_line(const std::vector<double>& x, const std::vector<double>& y) {
    const std::size_t n = std::min(x.size(), y.size());
    if (n < 2) return std::nullopt;
    double mean_x = 0, mean_y = 0;
    for (std::size_t i = 0; i < n; ++i)
        mean_x += x[i], mean_y += y[i];
    mean_x /= static_cast<double>(n);
    mean_y /= static_cast<double>(n);
    double xx = 0, xy = 0;
    for (std::size_t i = 0; i < n; ++i) {
        xx += (x[i] - mean_x) * (x[i] - mean_x);
        xy += (x[i] - mean_x) * (y[i] - mean_y);
    }
    if (xx < 1e-12) return std::nullopt;
    return Line{mean_y - xy / xx * mean_x, xy / xx};
}

} // namespace luft::profile
