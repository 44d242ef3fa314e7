#include "desk/play/capture.h"

#include <algorithm>
#include <cmath>

namespace luft::desk {

void Capture::start() {
    stop();
    input_ = make_input_();
    input_->start();
}

void Capture::stop() {
    if (input_) input_->stop();
    input_.reset();
    samples_.clear();
    shown_.clear();
}

std::span<const float> Capture::fetch() {
    samples_.clear();
    if (!input_) return {};
    input_->fetch(samples_);
    shown_.insert(shown_.end(), samples_.begin(), samples_.end());
    const auto most = static_cast<std::size_t>(kHold.value() * Input::kRate.per_second);
    if (shown_.size() > most) shown_.erase(shown_.begin(), shown_.end() - static_cast<std::ptrdiff_t>(most));
    return samples_;
}

std::optional<Decibels> Capture::level() const {
    if (shown_.empty()) return std::nullopt;
    float peak = 0;
    for (const float x : shown_)
        peak = std::max(peak, std::abs(x));
    return amplitude_level(std::min(1.0F, peak));
}

} // namespace luft::desk
