// Chance that comes out the same everywhere.
#pragma once

#include <cstdint>

namespace luft::singer {

/// SplitMix64 (Steele, Lea, Flood 2014, "Fast splittable pseudorandom number generators", fig. 13): 64-bit
/// state walked by the golden gamma, then mixed. The standard library's distributions differ between
/// machines, so none is used: all values are made by integer arithmetic and one exact division.
class Random {
  public:
    explicit constexpr Random(std::uint64_t seed) : state_(seed) {}

    constexpr std::uint64_t next() {
        std::uint64_t z = (state_ += 0x9E3779B97F4A7C15u);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
        return z ^ (z >> 31);
    }

    /// Even spread from 0 up to, not including, 1.
    constexpr double uniform() { return static_cast<double>(next() >> 11) * 0x1p-53; }

    /// Bell-shaped, mean 0, standard deviation 1: the sum of four even spreads (never beyond +-3.47).
    constexpr double bell() {
        constexpr double kScale = 1.7320508075688772; // a sum of four has variance 4/12
        return (uniform() + uniform() + uniform() + uniform() - 2) * kScale;
    }

    /// An independent stream for a part of the work.
    constexpr Random fork() { return Random(next()); }

  private:
    std::uint64_t state_;
};

} // namespace luft::singer
