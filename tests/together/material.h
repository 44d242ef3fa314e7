// What the tests of playing in step share: two recordings whose notes are known, and what is found in them by
// others' means.
#pragma once

#include "compare/heard.h"
#include "together/in_step.h"

#include <span>
#include <vector>

namespace luft::together::test {

/// Bursts of tone with gaps between them, the same ones each time, in a tempo of one's own.
struct Bursts {
    std::vector<float> samples;
    SampleRate rate;
    std::vector<Seconds> starts;
};

/// `slower`: how long each lasts against 1; each other seed has a rubato of its own.
Bursts bursts(double slower, std::uint64_t seed, SampleRate rate);

/// Aligned at the starts of all bursts.
compare::Alignment alignment_of(const Bursts& a, const Bursts& b);
InStep in_step(const Bursts& a, const Bursts& b);

/// From the start to the end, slowed down as the players do it.
std::vector<float> played(InStep sound, double speed);

/// One side of what was played.
std::vector<float> side(std::span<const float> stereo, int which);

/// How far apart the notes begin on both sides, in the time that is heard.
struct Offsets {
    std::size_t notes = 0;            ///< found on both sides
    std::size_t missed = 0;           ///< not found on one of them within 150 ms of where they should be
    double lean_ms = 0;               ///< median of right minus left
    double median_ms = 0, p95_ms = 0; ///< of the sizes
};

/// Of bursts, by libaubio's onset detector.
Offsets burst_offsets(std::span<const float> stereo, SampleRate rate, const std::vector<Seconds>& starts,
                      double speed);

/// Of sung notes, by libaubio's pitch tracker: where the pitch passes the middle between a note and the one
/// that it joins on to, at 44.1 kHz. `right_by`: how much higher the right is than the left, in semitones.
Offsets sung_offsets(std::span<const float> stereo, const singer::Truth& left, double right_by, double speed);

} // namespace luft::together::test
