// Pitches that go on from frame to frame.
#pragma once

#include "voice/pitch_track.h"

#include <cstdint>
#include <vector>

namespace luft::voice {

/// One candidate of a lattice.
struct ContourPoint {
    std::uint32_t frame = 0;
    std::uint32_t candidate = 0; ///< its place in Lattice::all()
};
/// In order of time, at most one point a frame.
using Contour = std::vector<ContourPoint>;

/// Links every candidate to the nearest one of the frames before, nearest pairs first: at most 70 cents away,
/// a fifth of a semitone more for each frame skipped, at most four of them (pitch contours after Salamon &
/// Gomez 2012, section II.B; limits after own trials). Every candidate is in one contour.
std::vector<Contour> link_contours(const Lattice& lattice);

} // namespace luft::voice
