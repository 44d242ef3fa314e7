// The level of the voice along a phrase, freed of what single notes do.
#pragma once

#include "base/curve.h"
#include "marks/marks.h"

#include <span>
#include <vector>

namespace luft::marks {

/// A stretch of up to 0.12 s out of the steady part of a note (the note without its first and last 15 %, 30
/// ms at least): starts, consonants and releases are other marks' matter.
struct LevelPoint {
    Seconds at;
    double level = 0;  ///< median of the level curve there, dB
    double weight = 0; ///< seconds
    std::size_t note = 0;
};

/// The points of `notes`, in order. Notes without a level have none.
std::vector<LevelPoint> level_points(const Curve<Decibels>& level, std::span<const Note> notes);

/// A smoothed path at equal steps of time from the first point to the last.
struct SmoothPath {
    Span span;
    std::vector<double> level; ///< dB, kPathSteps values
    double scatter = 0;        ///< how far notes lie off it: median distance x 1.4826, dB
    [[nodiscard]] double at(Seconds t) const;
};
inline constexpr std::size_t kPathSteps = 41;

/// Locally weighted straight lines with robust weights (Cleveland 1979, J. Am. Stat. Assoc. 74(368) 829,
/// equations 2-4), weighted by length as well; the robust weight belongs to a note as a whole, so that one
/// accented or swallowed note doesn't bend the line. The window reaches 0.3 of the phrase to either side
/// (tuned on songs 1400 to 1404 of tests/marks/level_scenes.h), and to one and a half notes at least. Needs
/// two points at different times.
SmoothPath smooth_path(const std::vector<LevelPoint>& points);

} // namespace luft::marks
