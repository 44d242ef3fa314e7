// How the register goes with pitch in one performance.
#pragma once

#include <vector>

namespace luft::marks {

/// Log odds that a tone of some pitch is sung in head register, before anything else is heard of it: a
/// straight line over pitch, level where the singer uses both registers on the same pitches. With the
/// register's states it makes a mixture of experts whose gate is the pitch (Jordan & Jacobs 1994, Neural
/// Computation 6(2), 181).
class Passaggio {
  public:
    /// Even odds at this pitch (a MIDI number), to start from.
    explicit Passaggio(double midi_pitch) : centre_(midi_pitch) {}

    /// One step of expectation maximisation: logistic regression of `head` (how much of each sample is in
    /// head register) on `pitch` (MIDI numbers), by Newton's method from where the line is. Three
    /// neighbouring samples count as one. The slope starts from, and is held at, 0.3 a semitone, and stays
    /// between 0 (head register isn't lower) and 0.8 (from nine in ten chest to nine in ten head within 5.5
    /// semitones; that one pitch decides isn't for a model to say).
    void fit(const std::vector<double>& pitch, const std::vector<double>& head);

    /// Between -4 and 4: pitch alone never says more.
    [[nodiscard]] double head_odds(double midi_pitch) const;

  private:
    double level_ = 0, slope_ = 0.3, centre_;
};

} // namespace luft::marks
