// The pitch that is sung, moment by moment: glides, scoops, drift, vibrato, unrest and cracks.
#pragma once

#include "singer/layout.h"
#include "singer/random.h"

#include <array>
#include <vector>

namespace luft::singer {

/// A register switch as it sounds at a time.
struct Crack {
    double level_db = 0;
    double semitones = 0;
    double roughness = 0; ///< 0 to 1
};

struct PlacedSwitch {
    Seconds time;
    marks::Register from, to;
    bool joined = false;
    bool broken = false;
};

/// All changes of register from note to note and inside notes.
std::vector<PlacedSwitch> switches_of(const Layout& layout);

class PitchPlan {
  public:
    PitchPlan(const Layout& layout, const Singer& singer, Random random);

    /// Fractional MIDI number against 440 Hz at time t, near which note `i` sounds.
    [[nodiscard]] double at(std::size_t i, double t) const;

    [[nodiscard]] Crack crack(double t) const;

  private:
    struct Cycle {
        double start, rate, extent;
    };

    [[nodiscard]] double alone(std::size_t i, double t) const;
    [[nodiscard]] double swing(std::size_t i, double t) const;

    const std::vector<PlacedNote>& notes_;
    std::vector<PlacedSwitch> switches_;
    std::vector<std::vector<Cycle>> vibrato_; // of each note
    std::array<double, 3> phases_{};
    double tuning_ = 0; // semitones
    double wander_ = 0;
    double glide_ = 0;
};

} // namespace luft::singer
