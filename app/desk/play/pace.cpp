#include "desk/play/pace.h"

#include <algorithm>

namespace luft::desk {

Pace::Pace(Line& line, SampleRate rate, std::int64_t frame, double speed)
    : line_(&line), from_(frame), speed_(speed), fed_(frame) {
    if (speed < 1) stretcher_.emplace(rate, 2, speed);
}

std::size_t Pace::pull(std::size_t count, std::vector<float>& out) {
    constexpr std::size_t kFeed = 512; // frames at a time: 11 ms at 48 kHz
    if (!stretcher_) {
        const std::span<const float> frames = line_->at(from_ + given_, count);
        out.insert(out.end(), frames.begin(), frames.end());
        given_ += static_cast<std::int64_t>(frames.size() / 2);
        return frames.size() / 2;
    }
    while (waiting_.size() < 2 * count && !ended_) {
        const std::span<const float> frames = line_->at(fed_, kFeed);
        fed_ += static_cast<std::int64_t>(frames.size() / 2);
        stretcher_->process(frames, waiting_);
        ended_ = frames.size() < 2 * kFeed;
        if (ended_) stretcher_->finish(waiting_);
    }
    const std::size_t n = std::min(2 * count, waiting_.size());
    const auto end = waiting_.begin() + static_cast<std::ptrdiff_t>(n);
    out.insert(out.end(), waiting_.begin(), end);
    waiting_.erase(waiting_.begin(), end);
    given_ += static_cast<std::int64_t>(n / 2);
    return n / 2;
}

} // namespace luft::desk
