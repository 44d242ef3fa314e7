#include "desk/play/silent_output.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {

/// Takes out what has sounded since the last look. The lock is held.
void SilentOutput::let_go() const {
    const Clock::time_point now = Clock::now();
    const double passed = std::chrono::duration<double>(now - at_).count();
    if (running_) left_ = std::max(0.0, left_ - passed * rate_.per_second);
    at_ = now;
}

void SilentOutput::queue(std::span<const float> samples) {
    const std::scoped_lock hold(lock_);
    let_go();
    const std::size_t frames = samples.size() / 2;
    left_ += static_cast<double>(frames);
}

std::int64_t SilentOutput::queued() const {
    const std::scoped_lock hold(lock_);
    let_go();
    return static_cast<std::int64_t>(std::ceil(left_));
}

void SilentOutput::clear() {
    const std::scoped_lock hold(lock_);
    let_go();
    left_ = 0;
}

void SilentOutput::start() {
    const std::scoped_lock hold(lock_);
    let_go();
    running_ = true;
}

void SilentOutput::stop() {
    const std::scoped_lock hold(lock_);
    let_go();
    running_ = false;
}

std::string SilentOutput::note() const {
    return reason_ +
           " Playing is silent. Connect a loudspeaker or headphones, see that no other program holds "
           "them alone, and open the recording again.";
}

} // namespace luft::desk
