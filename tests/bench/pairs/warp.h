// A recording warped in time along a known curve and moved in pitch, by the Rubber Band library: changed by
// something outside the project, and yet known everywhere.
#pragma once

#include "base/units.h"

#include <cstdint>
#include <span>
#include <vector>

namespace luft::bench {

/// Where each moment goes: rising knots with straight lines between them.
struct TimeMap {
    struct Knot {
        Seconds from, to;
    };
    std::vector<Knot> knots; ///< at least two; the first is at 0

    [[nodiscard]] Seconds operator()(Seconds from) const; ///< the last line goes on beyond its end
};

/// Speeds are against the original: 2 = twice as fast. Knots stand 0.25 s apart.
TimeMap steady(Seconds length, double speed);
/// Speed changes evenly from one to the other.
TimeMap leaning(Seconds length, double from, double to);
/// Speed swings by +- `depth` (0.3: a third faster to a third slower, as a factor exp(+-depth)) in two waves
/// of 4 to 9 s that go by seed.
TimeMap rubato(Seconds length, double depth, std::uint64_t seed);

/// Through the library's offline mode, finer engine, formants kept; interleaved samples in and out. How
/// exactly it keeps to the map is measured by map_error.
std::vector<float> warped(std::span<const float> samples, int channels, SampleRate rate, const TimeMap& map,
                          int semitones);

/// Largest distance, over clicks half a second apart that are warped so, of a click from where the map has
/// it.
Seconds map_error(const TimeMap& map, int semitones);

} // namespace luft::bench
