#include "base/rational.h"

#include "base/error.h"

#include <cmath>
#include <limits>

namespace luft {
namespace {

__extension__ typedef __int128 Wide;

Wide magnitude(Wide x) {
    return x < 0 ? -x : x;
}

Wide gcd(Wide a, Wide b) {
    a = magnitude(a);
    while (b != 0) {
        const Wide r = a % b;
        a = b;
        b = magnitude(r);
    }
    return a;
}

struct Lowest {
    std::int64_t num, den;
};

Lowest reduce(Wide num, Wide den) {
    if (den == 0) throw Error(Fault::bad_request, "A fraction can't have 0 below the line.");
    if (den < 0) {
        num = -num;
        den = -den;
    }
    const Wide g = num == 0 ? den : gcd(num, den);
    num /= g;
    den /= g;
    constexpr Wide kMost = std::numeric_limits<std::int64_t>::max();
    if (magnitude(num) > kMost || den > kMost)
        throw Error(Fault::internal, "A time grew beyond what exact arithmetic can hold.");
    return {static_cast<std::int64_t>(num), static_cast<std::int64_t>(den)};
}

Rational make(Wide num, Wide den) {
    const Lowest r = reduce(num, den);
    return {r.num, r.den};
}

} // namespace

Rational::Rational(std::int64_t num, std::int64_t den) {
    const Lowest r = reduce(num, den);
    num_ = r.num;
    den_ = r.den;
}

std::int64_t Rational::floor() const {
    const std::int64_t q = num_ / den_;
    return num_ % den_ < 0 ? q - 1 : q;
}

std::int64_t Rational::ceil() const {
    return -(-*this).floor();
}

std::int64_t Rational::round() const {
    return (*this + Rational(1, 2)).floor();
}

Rational operator+(Rational a, Rational b) {
    return make(Wide(a.num_) * b.den_ + Wide(b.num_) * a.den_, Wide(a.den_) * b.den_);
}
Rational operator-(Rational a, Rational b) {
    return make(Wide(a.num_) * b.den_ - Wide(b.num_) * a.den_, Wide(a.den_) * b.den_);
}
Rational operator*(Rational a, Rational b) {
    return make(Wide(a.num_) * b.num_, Wide(a.den_) * b.den_);
}
Rational operator/(Rational a, Rational b) {
    return make(Wide(a.num_) * b.den_, Wide(a.den_) * b.num_);
}

std::strong_ordering Rational::operator<=>(const Rational& o) const {
    const Wide l = Wide(num_) * o.den_;
    const Wide r = Wide(o.num_) * den_;
    return l < r   ? std::strong_ordering::less
           : l > r ? std::strong_ordering::greater
                   : std::strong_ordering::equal;
}

Rational nearest_rational(double x, std::int64_t den) {
    return {std::llround(x * static_cast<double>(den)), den};
}

} // namespace luft
