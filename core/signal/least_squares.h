// Linear regression with weights.
#pragma once

#include <initializer_list>
#include <vector>

namespace luft::signal {

/// Gathers observations y = sum of coefficient x value, and solves for the coefficients.
class LeastSquares {
  public:
    explicit LeastSquares(std::size_t coefficients);

    /// One observation; `values` has one number a coefficient.
    void add(std::initializer_list<double> values, double y, double weight);

    /// The coefficients that make the weighted squares least (normal equations, Gaussian elimination with
    /// pivoting). `ridge` > 0 is added to the diagonal (Hoerl & Kennard 1970): coefficients about which
    /// nothing is known come out as 0.
    [[nodiscard]] std::vector<double> solve(double ridge) const;

  private:
    std::size_t n_;
    std::vector<double> products_, right_;
};

} // namespace luft::signal
