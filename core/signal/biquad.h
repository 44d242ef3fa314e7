// Second-order filters.
#pragma once

#include "base/units.h"

namespace luft::signal {

/// A second-order section in transposed direct form II. Coefficients by the bilinear transform of the
/// Butterworth prototype (Q = 1/sqrt 2).
class Biquad {
  public:
    static Biquad low_pass(Hertz corner, SampleRate rate);
    static Biquad high_pass(Hertz corner, SampleRate rate);

    float operator()(float x) {
        const double y = b0_ * x + s1_;
        s1_ = b1_ * x - a1_ * y + s2_;
        s2_ = b2_ * x - a2_ * y;
        return static_cast<float>(y);
    }

  private:
    double b0_ = 1, b1_ = 0, b2_ = 0, a1_ = 0, a2_ = 0;
    double s1_ = 0, s2_ = 0;
};

} // namespace luft::signal
