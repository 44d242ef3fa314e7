#include "tape/stereo_tape.h"

#include "signal/stereo.h"

#include <algorithm>

namespace luft::tape {
namespace {

/// So far forward, reading on is quicker than a seek, which decodes a run-up of its own. Tuned by hand.
constexpr Seconds kNear{5};

} // namespace

void StereoTape::read(std::int64_t from, std::span<float> stereo) {
    if (from < 0) {
        const auto before = std::min(static_cast<std::size_t>(-from), stereo.size() / 2);
        std::ranges::fill(stereo.first(2 * before), 0.0F);
        stereo = stereo.subspan(2 * before);
        from = 0;
    }
    if (stereo.empty()) return;
    if (from != next_) go_to(from);
    while (!stereo.empty() && more()) {
        const std::size_t n = std::min(stereo.size(), ahead_.size() - used_);
        std::copy_n(ahead_.begin() + static_cast<std::ptrdiff_t>(used_), n, stereo.begin());
        used_ += n;
        next_ += static_cast<std::int64_t>(n / 2);
        stereo = stereo.subspan(n);
    }
    std::ranges::fill(stereo, 0.0F);
}

void StereoTape::go_to(std::int64_t sample) {
    const std::int64_t near = static_cast<std::int64_t>(kNear.value() * rate().per_second);
    if (sample < next_ || sample - next_ > near) {
        sound_->go_to(sample);
        ahead_.clear();
        used_ = 0;
        next_ = sample;
        ended_ = false;
    }
    while (next_ < sample && more()) {
        const auto n = std::min(static_cast<std::size_t>(sample - next_) * 2, ahead_.size() - used_);
        used_ += n;
        next_ += static_cast<std::int64_t>(n / 2);
    }
}

/// Whether there is anything in `ahead_`, after reading on if need be.
bool StereoTape::more() {
    while (used_ == ahead_.size() && !ended_) {
        ahead_.clear();
        used_ = 0;
        if (const auto block = sound_->read())
            signal::Stereo(sound_->format().channels).mix(block->samples, ahead_);
        else
            ended_ = true;
    }
    return used_ < ahead_.size();
}

} // namespace luft::tape
