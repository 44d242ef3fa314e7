// How long work reports how far it is, and learns that it should stop.
#pragma once

#include "base/error.h"

#include <functional>
#include <stop_token>
#include <string_view>

namespace luft {

/// Handed to long work by its caller. Both parts may be empty. The work calls `step` often.
class Progress {
  public:
    using Report = std::function<void(double done, std::string_view doing)>;

    Progress() = default;
    explicit Progress(Report report, std::stop_token stop = {}) : report_(std::move(report)), stop_(stop) {}

    /// Reports `done` (0 to 1 of this work) and what is being done. Throws Stopped when told to stop.
    void step(double done, std::string_view doing) const {
        if (stop_.stop_requested()) throw Stopped();
        if (report_) report_(from_ + (to_ - from_) * done, doing);
    }

    /// The progress of a part of the work, whose 0 to 1 is `from` to `to` of the whole.
    [[nodiscard]] Progress part(double from, double to) const {
        Progress p = *this;
        p.from_ = from_ + (to_ - from_) * from;
        p.to_ = from_ + (to_ - from_) * to;
        return p;
    }

  private:
    Report report_;
    std::stop_token stop_;
    double from_ = 0;
    double to_ = 1;
};

} // namespace luft
