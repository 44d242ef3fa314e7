// One line of singing with its staff, wherever on a page it stands: what the ribbon, its signs and its words
// are placed and drawn by.
#pragma once

#include "sheet/ribbon.h"

#include <functional>
#include <vector>

namespace luft::sheet {

/// The room in which height is pitch. Lengths in units, from the row's top.
struct Staff {
    double top = 0, bottom = 0;
    double left = 0, right = 0; ///< of its rules
    double high = 0;            ///< pitch at the top
    double semitone = 7;        ///< units

    [[nodiscard]] double y_of(double pitch) const { return top + (high - pitch) * semitone; }
    [[nodiscard]] double pitch_at(double y) const { return high - (y - top) / semitone; }
};

/// All pointers into what must outlive it.
struct SungLine {
    const profile::Source* source = nullptr;
    Span sung;                                               ///< where the ribbon runs
    const std::vector<const project::Mark*>* notes = {};     ///< in order of time
    const std::vector<const project::SungWord*>* words = {}; ///< in their order
    double low = 60, high = 60;                              ///< pitches of its notes, at its own tuning
    LevelRange levels;
    double per_second = 90;
    double edge = 0; ///< right end of what may be drawn in
    Staff staff;
    double shift = 0; ///< semitones by which it is drawn higher than sung
    std::function<double(Seconds)> x_of = {};

    /// Of a pitch at the performance's own tuning.
    [[nodiscard]] double y_of(double pitch) const { return staff.y_of(pitch + shift); }
};

} // namespace luft::sheet
