#include "together/in_step.h"

#include <algorithm>
#include <cmath>

namespace luft::together {
namespace {

/// As a side of its own.
std::optional<Lufs> loudness_alone(const Recording& r) {
    constexpr Lufs kSpread{3.01}; // 10 log10 2
    if (!r.loudness || r.sound->format().channels.size() == 1) return r.loudness;
    return *r.loudness - kSpread;
}

} // namespace

Gains even_out(const Recording& a, const Recording& b) {
    const auto left = loudness_alone(a), right = loudness_alone(b);
    if (!left || !right) return {};
    const auto down_by = [](Lufs much) {
        return static_cast<float>(amplitude_of(Decibels(-std::max(much.value(), 0.0))));
    };
    return {down_by(*left - *right), down_by(*right - *left)};
}

InStep::InStep(Recording a, Recording b, const compare::Alignment& alignment, bool transposed)
    : gains_(even_out(a, b)), a_(std::move(a.sound)),
      b_(tape::MonoTape(std::move(b.sound), a_->format().rate), alignment,
         transposed ? std::exp2(-(alignment.semitones / 12.0 + alignment.tuning.value() / 1200)) : 1),
      stereo_(a_->format().channels), format_{a_->format().rate, {ChannelRole::left, ChannelRole::right}} {}

std::optional<AudioBlock> InStep::read() {
    const auto block = a_->read();
    if (!block) return std::nullopt;
    frames_.clear();
    stereo_.mix(block->samples, frames_);
    right_.resize(frames_.size() / 2);
    b_.read(block->first, right_);
    for (std::size_t i = 0; i < right_.size(); ++i) {
        frames_[2 * i] = gains_.a * (frames_[2 * i] + frames_[2 * i + 1]) / 2;
        frames_[2 * i + 1] = gains_.b * right_[i];
    }
    return AudioBlock{block->first, frames_};
}

void InStep::go_to(std::int64_t sample) {
    a_->go_to(sample);
}

} // namespace luft::together
