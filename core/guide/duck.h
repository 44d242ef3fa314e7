// How far the music steps back under an aside.
#pragma once

#include "guide/clock.h"
#include "script/cue_sheet.h"

#include <cstdint>
#include <span>
#include <vector>

namespace luft::guide {

/// Under an aside the music is this much softer, so that a voice at the same level is understood. Common
/// practice, no source; likewise the lengths of the two ramps.
inline constexpr Decibels kDuck{-12};
inline constexpr Seconds kDuckDown{0.3}; ///< before the aside begins, so that its first word stands clear
inline constexpr Seconds kDuckUp{0.5};   ///< after it

class Duck {
  public:
    /// The asides that lie in one segment.
    Duck(const script::CueSheet& sheet, const script::Segment& segment, const Clock& clock);

    /// Lowers music that begins at that sample of the programme.
    void lower(std::span<float> stereo, std::int64_t first) const;

  private:
    struct Passage {
        std::int64_t from = 0, to = 0;
    };
    [[nodiscard]] double depth(std::int64_t sample) const;

    std::vector<Passage> passages_;
    double down_ = 1, up_ = 1; ///< samples of the ramps
};

} // namespace luft::guide
