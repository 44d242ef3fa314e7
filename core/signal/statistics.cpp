#include "signal/statistics.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace luft::signal {
namespace {

template <class T>
std::optional<double> quantile_of(std::span<const T> values, double q) {
    std::vector<T> numbers;
    numbers.reserve(values.size());
    std::copy_if(values.begin(), values.end(), std::back_inserter(numbers),
                 [](T v) { return !std::isnan(v); });
    if (numbers.empty()) return std::nullopt;
    const double place = std::clamp(q, 0.0, 1.0) * static_cast<double>(numbers.size() - 1);
    const auto below = static_cast<std::ptrdiff_t>(place);
    std::nth_element(numbers.begin(), numbers.begin() + below, numbers.end());
    const double low = numbers[static_cast<std::size_t>(below)];
    const double part = place - static_cast<double>(below);
    if (part == 0) return low;
    const double high = *std::min_element(numbers.begin() + below + 1, numbers.end());
    return low + part * (high - low);
}

} // namespace

std::optional<double> quantile(std::span<const float> values, double q) {
    return quantile_of(values, q);
}
std::optional<double> quantile(std::span<const double> values, double q) {
    return quantile_of(values, q);
}

std::optional<double> mean(std::span<const float> values) {
    double sum = 0;
    std::size_t n = 0;
    for (const float v : values)
        if (!std::isnan(v)) {
            sum += v;
            ++n;
        }
    if (n == 0) return std::nullopt;
    return sum / static_cast<double>(n);
}

std::optional<Line> fit_line(std::span<const float> values) {
    double n = 0, sx = 0, sy = 0, sxx = 0, sxy = 0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (std::isnan(values[i])) continue;
        const double x = static_cast<double>(i), y = values[i];
        n += 1;
        sx += x;
        sy += y;
        sxx += x * x;
        sxy += x * y;
    }
    if (n < 2) return std::nullopt;
    const double slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
    return Line{(sy - slope * sx) / n, slope};
}

std::vector<float> running_median(std::span<const float> values, int half) {
    const auto n = static_cast<int>(values.size());
    std::vector<float> out(values.size(), std::numeric_limits<float>::quiet_NaN());
    std::vector<float> window;
    for (int i = 0; i < n; ++i) {
        if (std::isnan(values[static_cast<std::size_t>(i)])) continue;
        window.clear();
        for (int j = std::max(0, i - half); j <= std::min(n - 1, i + half); ++j)
            if (!std::isnan(values[static_cast<std::size_t>(j)]))
                window.push_back(values[static_cast<std::size_t>(j)]);
        const auto middle = window.begin() + static_cast<std::ptrdiff_t>(window.size() / 2);
        std::nth_element(window.begin(), middle, window.end());
        out[static_cast<std::size_t>(i)] = *middle;
    }
    return out;
}

std::vector<float> running_mean(std::span<const float> values, int half) {
    const auto n = static_cast<int>(values.size());
    std::vector<float> out(values.size(), std::numeric_limits<float>::quiet_NaN());
    const auto at = [&](int i) { return values[static_cast<std::size_t>(i)]; };
    int begin = 0;
    while (begin < n) {
        if (std::isnan(at(begin))) {
            ++begin;
            continue;
        }
        int end = begin;
        while (end < n && !std::isnan(at(end)))
            ++end;
        std::vector<double> sums(static_cast<std::size_t>(end - begin) + 1, 0.0);
        for (int i = begin; i < end; ++i)
            sums[static_cast<std::size_t>(i - begin) + 1] = sums[static_cast<std::size_t>(i - begin)] + at(i);
        for (int i = begin; i < end; ++i) {
            const int reach = std::min({half, i - begin, end - 1 - i});
            const double sum = sums[static_cast<std::size_t>(i + reach - begin) + 1] -
                               sums[static_cast<std::size_t>(i - reach - begin)];
            out[static_cast<std::size_t>(i)] = static_cast<float>(sum / (2 * reach + 1));
        }
        begin = end;
    }
    return out;
}

double logistic(double x) {
    return 1 / (1 + std::exp(-x));
}

} // namespace luft::signal
