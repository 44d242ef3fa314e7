// A line at a speed.
#pragma once

#include "desk/play/line.h"
#include "signal/stretch.h"

#include <optional>
#include <vector>

namespace luft::desk {

/// At speed 1 the line's frames go through unchanged; below, a Stretcher slows them down.
class Pace {
  public:
    /// From this frame of the line on. `speed` from Stretcher::kSlowest to 1. The line must outlive it.
    Pace(Line& line, SampleRate rate, std::int64_t frame, double speed);

    /// Appends up to `count` frames; fewer only at the end of the line. Throws as Line::at.
    std::size_t pull(std::size_t count, std::vector<float>& out);

    /// The line's frame that the next frame out is.
    [[nodiscard]] double place() const {
        return static_cast<double>(from_) + static_cast<double>(given_) * speed_;
    }
    [[nodiscard]] double speed() const { return speed_; }

  private:
    Line* line_;
    std::int64_t from_;
    double speed_;
    std::optional<signal::Stretcher> stretcher_;
    std::int64_t fed_;           ///< the line's frame that the stretcher gets next
    std::int64_t given_ = 0;     ///< frames out
    std::vector<float> waiting_; ///< stretched, not yet out
    bool ended_ = false;
};

} // namespace luft::desk
