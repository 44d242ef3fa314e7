// Whether a confidence of 0.8 is right eight times in ten.
#pragma once

#include "base/units.h"

#include <array>
#include <map>
#include <string>
#include <vector>

namespace luft::bench {

/// Confidences of one kind of mark in five bins of equal width, the last one including 1.
class Reliability {
  public:
    struct Bin {
        double count = 0, confidence = 0, right = 0; ///< sums
    };
    void add(Confidence said, bool right);
    Reliability& operator+=(const Reliability& o);
    [[nodiscard]] const std::array<Bin, 5>& bins() const { return bins_; }
    [[nodiscard]] double count() const;
    /// Expected calibration error: mean over marks of the distance between a bin's share right and its mean
    /// confidence (Guo, Pleiss, Sun & Weinberger 2017, ICML, eq. 3).
    [[nodiscard]] double error() const;

  private:
    std::array<Bin, 5> bins_{};
};

/// By kind of mark. Right is what the mark's own score calls a hit; a note's also has the right pitch, a
/// phrase both its ends, an onset kind is asked of notes that were hit and have one.
using Calibration = std::map<std::string, Reliability>;

} // namespace luft::bench
