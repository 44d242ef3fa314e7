#include "signal/least_squares.h"

#include <algorithm>
#include <cmath>

namespace luft::signal {

LeastSquares::LeastSquares(std::size_t coefficients)
    : n_(coefficients), products_(n_ * n_, 0.0), right_(n_, 0.0) {}

void LeastSquares::add(std::initializer_list<double> values, double y, double weight) {
    const double* x = values.begin();
    for (std::size_t i = 0; i < n_; ++i) {
        for (std::size_t k = 0; k < n_; ++k)
            products_[i * n_ + k] += weight * x[i] * x[k];
        right_[i] += weight * x[i] * y;
    }
}

std::vector<double> LeastSquares::solve(double ridge) const {
    std::vector<double> a = products_, x = right_;
    for (std::size_t i = 0; i < n_; ++i)
        a[i * n_ + i] += ridge;
    for (std::size_t i = 0; i < n_; ++i) {
        std::size_t pivot = i;
        for (std::size_t r = i + 1; r < n_; ++r)
            if (std::abs(a[r * n_ + i]) > std::abs(a[pivot * n_ + i])) pivot = r;
        if (a[pivot * n_ + i] == 0) continue;
        for (std::size_t k = 0; k < n_; ++k)
            std::swap(a[i * n_ + k], a[pivot * n_ + k]);
        std::swap(x[i], x[pivot]);
        for (std::size_t r = 0; r < n_; ++r) {
            if (r == i) continue;
            const double factor = a[r * n_ + i] / a[i * n_ + i];
            for (std::size_t k = i; k < n_; ++k)
                a[r * n_ + k] -= factor * a[i * n_ + k];
            x[r] -= factor * x[i];
        }
    }
    for (std::size_t i = 0; i < n_; ++i)
        x[i] = a[i * n_ + i] == 0 ? 0 : x[i] / a[i * n_ + i];
    return x;
}

} // namespace luft::signal
