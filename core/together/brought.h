// The second performance at the first one's time.
#pragma once

#include "compare/alignment.h"
#include "signal/follower.h"
#include "tape/mono_tape.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace luft::together {

/// B's sound where A's time has a counterpart, silence elsewhere. What only B has isn't heard: where it lies
/// between two stretches, B leaps over it. Each run of stretches that meet on both sides is followed without
/// a break; its edges are faded, in the 20 ms beside it where there is room.
class Brought {
  public:
    /// `b` at the rate that A's samples are counted at. `pitch` is a factor on B's frequencies.
    Brought(tape::MonoTape b, const compare::Alignment& alignment, double pitch);

    /// Fills `out` with what sounds from A's sample `from` on. Quickest where it goes on from the last call;
    /// from elsewhere it begins anew. Throws as StereoTape::read.
    void read(std::int64_t from, std::span<float> out);

  private:
    /// A run of stretches.
    struct Run {
        std::vector<signal::Knot> knots; ///< from B's samples to A's
        std::int64_t start = 0, end = 0; ///< in A's samples, with the room for the fades
    };
    void follow(const Run& run, std::int64_t from, std::span<float> out);

    tape::MonoTape tape_;
    double pitch_;
    std::vector<Run> runs_; ///< in order
    const Run* followed_ = nullptr;
    std::optional<signal::Follower> follower_;
    std::int64_t fed_ = 0;    ///< B's sample that it gets next
    std::int64_t next_ = 0;   ///< A's sample that `made_` begins with
    std::vector<float> made_; ///< not handed out
};

} // namespace luft::together
