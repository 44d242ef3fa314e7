// Which media time sounds at which frame of the output.
#pragma once

#include "base/units.h"

#include <cstdint>
#include <deque>

namespace luft::desk {

/// Frames out that follow each other in media time.
struct Stretch {
    std::int64_t count = 0;
    Seconds media; ///< of the first frame
    Seconds step;  ///< from one frame to the next
};

/// Kept for what hasn't sounded yet.
class Course {
  public:
    /// Forgets all; frame 0 comes next, and stands here.
    void begin(Seconds media);
    /// The next frames out.
    void add(const Stretch& stretch);
    [[nodiscard]] std::int64_t end() const { return end_; }

    /// Media time of a frame. Before the first known one it is that one's, after the last the last one's end.
    [[nodiscard]] Seconds at(std::int64_t frame) const;
    void forget(std::int64_t before);

  private:
    struct Placed {
        std::int64_t first = 0;
        Stretch stretch;
    };
    std::deque<Placed> placed_;
    Seconds rest_; ///< the time when nothing is known
    std::int64_t end_ = 0;
};

} // namespace luft::desk
