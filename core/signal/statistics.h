// Order statistics and small fits over measured values.
#pragma once

#include <optional>
#include <span>
#include <vector>

namespace luft::signal {

/// The q-quantile (0 to 1) of the values that are numbers (NaN is passed over), linear between neighbours
/// (Hyndman & Fan 1996, definition 7). None when there is no number.
std::optional<double> quantile(std::span<const float> values, double q);
std::optional<double> quantile(std::span<const double> values, double q);

inline std::optional<double> median(std::span<const float> values) {
    return quantile(values, 0.5);
}
inline std::optional<double> median(std::span<const double> values) {
    return quantile(values, 0.5);
}

/// Mean of the values that are numbers.
std::optional<double> mean(std::span<const float> values);

/// A straight line by least squares through (index, value); NaN is passed over. None under two numbers.
struct Line {
    double intercept = 0;
    double slope = 0; ///< per index step
};
std::optional<Line> fit_line(std::span<const float> values);

/// Running median over 2 x half + 1 values; NaN is passed over, and stays NaN where the centre is NaN.
std::vector<float> running_median(std::span<const float> values, int half);

/// Running mean over 2 x half + 1 values; NaN is passed over, and stays NaN where the centre is NaN. At the
/// ends of a run of numbers the window shrinks on both sides alike, so that a slope isn't bent.
std::vector<float> running_mean(std::span<const float> values, int half);

/// 1 / (1 + e^-x): turns a score into a share between 0 and 1.
double logistic(double x);

} // namespace luft::signal
