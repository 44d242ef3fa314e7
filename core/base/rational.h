// Exact fractions for programme time: frame rates like 30000/1001 leave no rounding behind.
#pragma once

#include "base/units.h"

#include <compare>
#include <cstdint>

namespace luft {

/// A fraction in lowest terms, denominator above 0. Arithmetic is exact; a result that doesn't fit 64 bits
/// throws Error(internal) instead of wrapping.
class Rational {
  public:
    constexpr Rational() = default;
    constexpr Rational(std::int64_t whole) : num_(whole) {} // a whole number is exact: no `explicit` needed
    Rational(std::int64_t num, std::int64_t den);           // throws Error(bad_request) when den is 0

    [[nodiscard]] constexpr std::int64_t num() const { return num_; }
    [[nodiscard]] constexpr std::int64_t den() const { return den_; }
    [[nodiscard]] constexpr double as_double() const {
        return static_cast<double>(num_) / static_cast<double>(den_);
    }

    [[nodiscard]] std::int64_t floor() const;
    [[nodiscard]] std::int64_t ceil() const;
    /// Nearest whole number; halves go up.
    [[nodiscard]] std::int64_t round() const;

    friend Rational operator+(Rational a, Rational b);
    friend Rational operator-(Rational a, Rational b);
    friend Rational operator*(Rational a, Rational b);
    friend Rational operator/(Rational a, Rational b); // throws Error(bad_request) when b is 0
    Rational operator-() const { return Rational(0) - *this; }
    Rational& operator+=(Rational o) { return *this = *this + o; }
    Rational& operator-=(Rational o) { return *this = *this - o; }

    constexpr bool operator==(const Rational&) const = default;
    std::strong_ordering operator<=>(const Rational& o) const;

  private:
    std::int64_t num_ = 0;
    std::int64_t den_ = 1;
};

/// The fraction nearest to x with the given denominator.
Rational nearest_rational(double x, std::int64_t den);

/// An exact time as one for the clock and the ear.
inline Seconds seconds(Rational exact) {
    return Seconds(exact.as_double());
}

} // namespace luft
