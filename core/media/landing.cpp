#include "media/landing.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace luft::media {

void Landing::begin(std::int64_t length, std::int64_t end) {
    if (knows_beginning()) return;
    ++frames_;
    if (frames_ == 1) return;
    length_ = frames_ == 2 || length == length_ ? length : 0;
    grid_ = end;
}

void Landing::lift() {
    offs_.clear();
}

std::optional<std::int64_t> Landing::settled(std::int64_t next, std::int64_t tick,
                                             std::int64_t rounding) const {
    if (offs_.empty()) return std::nullopt;
    std::vector<std::int64_t> sorted = offs_;
    const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2);
    std::nth_element(sorted.begin(), middle, sorted.end());
    if (std::abs(*middle) >= rounding) return std::nullopt;
    const std::int64_t by_stamps = next + *middle;
    if (tick < 2 || length_ == 0 || !knows_beginning()) return by_stamps;
    const double frames = static_cast<double>(by_stamps - grid_) / static_cast<double>(length_);
    const std::int64_t on_grid = grid_ + std::llround(frames) * length_;
    return std::abs(on_grid - by_stamps) <= tick ? on_grid : by_stamps;
}

} // namespace luft::media
