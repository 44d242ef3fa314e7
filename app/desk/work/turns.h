// Spans of two recordings that are heard one after the other.
#pragma once

#include "sheet/pair_rows.h"

#include <deque>
#include <optional>

namespace luft::desk {

struct Turn {
    sheet::Which which = sheet::Which::a;
    Span span;         ///< that performance's own time
    bool both = false; ///< with the other one in step beside it: A left, B right; `which` is A then
    bool operator==(const Turn&) const = default;
};

class Turns {
  public:
    void start(std::deque<Turn> turns) { left_ = std::move(turns); }
    void clear() { left_.clear(); }
    /// What sounds now, or is to; none when all has been heard.
    [[nodiscard]] std::optional<Turn> now() const {
        return left_.empty() ? std::nullopt : std::optional(left_.front());
    }
    /// To be asked often while it plays: whether the turn that sounds is over, because its end is reached or
    /// because the recording has ended before. The next one is `now` then.
    bool over(Seconds position, bool playing) {
        if (left_.empty() || (playing && position < left_.front().span.end)) return false;
        left_.pop_front();
        return true;
    }

  private:
    std::deque<Turn> left_;
};

} // namespace luft::desk
