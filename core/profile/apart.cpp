#include "profile/apart.h"

#include <algorithm>
#include <cmath>

namespace luft::profile {
namespace {

constexpr double kMiddle80 = 2.563;  // standard deviations of a normal distribution from 10 % to 90 %
constexpr double kOfMedian = 1.2533; // sqrt(pi / 2)

double error_squared(const Summed& s) {
    const double error = kOfMedian * (s.high - s.low) / kMiddle80;
    return error * error / s.count;
}

double log_choose(int n, int k) {
    return std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0);
}

bool outside(double value, const Summed& s) {
    return value < s.low || value > s.high;
}

} // namespace

bool apart(const Summed& x, const Summed& y) {
    if (x.count < 1 || y.count < 1 || !outside(x.median, y) || !outside(y.median, x)) return false;
    return std::abs(x.median - y.median) > 3 * std::sqrt(error_squared(x) + error_squared(y));
}

double fisher(int x, int of_x, int y, int of_y) {
    const int all = x + y;
    if (of_x < 1 || of_y < 1 || x > of_x || y > of_y) return 1;
    const auto log_probability = [&](int k) {
        return log_choose(of_x, k) + log_choose(of_y, all - k) - log_choose(of_x + of_y, all);
    };
    const double here = log_probability(x);
    double sum = 0;
    for (int k = std::max(0, all - of_y); k <= std::min(all, of_x); ++k)
        if (const double p = log_probability(k); p <= here + 1e-9) sum += std::exp(p);
    return std::min(1.0, sum);
}

} // namespace luft::profile
