#include "desk/play/course.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {

void Course::begin(Seconds media) {
    placed_.clear();
    rest_ = media;
    end_ = 0;
}

void Course::add(const Stretch& stretch) {
    if (stretch.count <= 0) return;
    if (!placed_.empty()) {
        Stretch& last = placed_.back().stretch;
        const Seconds goes_on = last.media + static_cast<double>(last.count) * last.step;
        if (last.step == stretch.step && std::abs((goes_on - stretch.media).value()) < 1e-6) {
            last.count += stretch.count;
            end_ += stretch.count;
            return;
        }
    }
    placed_.push_back({end_, stretch});
    end_ += stretch.count;
}

Seconds Course::at(std::int64_t frame) const {
    if (placed_.empty()) return rest_;
    auto place = placed_.begin();
    while (place + 1 != placed_.end() && (place + 1)->first <= frame)
        ++place;
    const std::int64_t into = std::clamp<std::int64_t>(frame - place->first, 0, place->stretch.count);
    return place->stretch.media + static_cast<double>(into) * place->stretch.step;
}

void Course::forget(std::int64_t before) {
    while (placed_.size() > 1 && placed_[1].first <= before)
        placed_.pop_front();
}

} // namespace luft::desk
