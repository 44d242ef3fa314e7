// The sung pitch as a ribbon: where it runs, how thick it is, and in which register.
#pragma once

#include "profile/profile.h"

#include <optional>
#include <utility>
#include <vector>

namespace luft::sheet {

struct RibbonPoint {
    Seconds time;
    double pitch = 0; ///< MIDI number at the performance's own tuning
    double loud = 0;  ///< 0 for the softest, 1 for the loudest singing of the performance
};

/// A stretch without a break, all in one register.
struct RibbonPiece {
    std::vector<RibbonPoint> points; ///< at least two
    std::optional<marks::Register> sung_in;
};

/// Levels between which thickness changes.
struct LevelRange {
    Decibels soft, loud;
};

/// Semitones by which the performance's A4 lies over 440 Hz: taken off a pitch it gives the note on the page.
double retuned(const profile::Source& source);

/// 10th (less 3 dB) and 95th percentile of the notes' levels, at least 6 dB apart.
LevelRange level_range(const profile::Source& source);

/// The line of pitch over `span`, a point every 20 ms (enough to show a vibrato of 8 Hz), from the curves of
/// pitch and level; from the notes alone where there is no curve. What lies more than four semitones outside
/// `low` to `high` is a slip of the pitch track and left out. `notes`, in order of time, tell the registers.
std::vector<RibbonPiece> ribbon(const profile::Source& source, Span span,
                                const std::vector<const marks::Note*>& notes, double low, double high,
                                LevelRange levels);

} // namespace luft::sheet
