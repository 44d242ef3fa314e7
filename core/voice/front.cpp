#include "voice/front.h"

#include <algorithm>

namespace luft::voice {
namespace {

/// How much of a channel goes into the middle signal. Film mixes keep the voice in the centre channel.
float share_of_middle(ChannelRole role, std::size_t channels) {
    switch (role) {
    case ChannelRole::left:
    case ChannelRole::right:
        return 0.5F;
    case ChannelRole::centre:
        return channels == 1 ? 1.0F : 0.7F;
    case ChannelRole::low_frequency:
        return 0.0F;
    case ChannelRole::surround_left:
    case ChannelRole::surround_right:
        return 0.25F;
    case ChannelRole::other:
        return 1.0F / static_cast<float>(channels);
    }
    return 0.0F;
}

float share_of_side(ChannelRole role) {
    return role == ChannelRole::left ? 0.5F : role == ChannelRole::right ? -0.5F : 0.0F;
}

} // namespace

Front::Front(SampleSource& source)
    : source_(source), stereo_(std::ranges::count(source.format().channels, ChannelRole::left) == 1 &&
                               std::ranges::count(source.format().channels, ChannelRole::right) == 1),
      to_middle_(source.format().rate, kEarRate), to_side_(source.format().rate, kEarRate),
      middle_(kFrameSamples / 2, 0.0F), side_(stereo_ ? kFrameSamples / 2 : 0, 0.0F) {
    source_.rewind();
}

Seconds Front::duration() const {
    return Seconds(static_cast<double>(native_frames_) / source_.format().rate.per_second);
}

void Front::take(const AudioBlock& block) {
    const auto& roles = source_.format().channels;
    const std::size_t channels = roles.size();
    const std::size_t frames = block.samples.size() / channels;
    native_middle_.assign(frames, 0.0F);
    native_side_.assign(stereo_ ? frames : 0, 0.0F);
    for (std::size_t c = 0; c < channels; ++c) {
        const float to_middle = channels == 1 ? 1.0F : share_of_middle(roles[c], channels);
        const float to_side = share_of_side(roles[c]);
        for (std::size_t i = 0; i < frames; ++i) {
            const float x = block.samples[i * channels + c];
            native_middle_[i] += to_middle * x;
            if (stereo_) native_side_[i] += to_side * x;
        }
    }
    native_frames_ += static_cast<std::int64_t>(frames);
    to_middle_.process(native_middle_, middle_);
    if (stereo_) to_side_.process(native_side_, side_);
}

bool Front::fill(std::int64_t until) {
    while (first_ + static_cast<std::int64_t>(middle_.size()) < until) {
        if (ended_) return false;
        if (const auto block = source_.read()) {
            if (tap_) tap_(*block);
            take(*block);
            continue;
        }
        ended_ = true;
        to_middle_.finish(middle_);
        if (stereo_) to_side_.finish(side_);
    }
    return true;
}

std::optional<Frame> Front::next() {
    const std::int64_t centre = frame_ * kHopSamples;
    const std::int64_t begin = centre - kFrameSamples / 2;
    if (!fill(begin + kFrameSamples)) {
        const auto length = static_cast<std::int64_t>(duration() / Seconds(1.0 / kEarRate.per_second));
        if (centre >= length) return std::nullopt;
        const auto needed = static_cast<std::size_t>(begin + kFrameSamples - first_);
        if (middle_.size() < needed) middle_.resize(needed, 0.0F);
        if (stereo_ && side_.size() < needed) side_.resize(needed, 0.0F);
    }
    const auto offset = static_cast<std::size_t>(begin - first_);
    // Old samples are dropped in large steps, so that moving the rest costs next to nothing.
    if (offset > 1 << 15) {
        middle_.erase(middle_.begin(), middle_.begin() + static_cast<std::ptrdiff_t>(offset));
        if (stereo_)
            side_.erase(side_.begin(),
                        side_.begin() + static_cast<std::ptrdiff_t>(std::min(offset, side_.size())));
        first_ = begin;
        return next();
    }
    if (stereo_ && side_.size() < offset + kFrameSamples) side_.resize(offset + kFrameSamples, 0.0F);
    ++frame_;
    const std::span<const float> middle(middle_);
    return Frame{{frame_ - 1},
                 middle.subspan(offset, kFrameSamples),
                 stereo_ ? std::span<const float>(side_).subspan(offset, kFrameSamples)
                         : std::span<const float>(),
                 middle.subspan(offset + kFrameSamples / 2, kHopSamples)};
}

} // namespace luft::voice
