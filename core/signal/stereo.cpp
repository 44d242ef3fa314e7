#include "signal/stereo.h"

#include <algorithm>
#include <numbers>
#include <numeric>
#include <utility>

namespace luft::signal {
namespace {

/// Left and right gain.
std::pair<float, float> gains(ChannelRole role) {
    constexpr float kShared = 1 / std::numbers::sqrt2_v<float>;
    switch (role) {
    case ChannelRole::left:
        return {1, 0};
    case ChannelRole::right:
        return {0, 1};
    case ChannelRole::surround_left:
        return {kShared, 0};
    case ChannelRole::surround_right:
        return {0, kShared};
    case ChannelRole::low_frequency:
        return {0, 0};
    case ChannelRole::centre:
    case ChannelRole::other:
        break;
    }
    return {kShared, kShared};
}

} // namespace

Stereo::Stereo(const std::vector<ChannelRole>& channels) {
    if (channels.size() == 1) {
        left_ = right_ = {1};
    } else if (channels.size() == 2) {
        left_ = {1, 0};
        right_ = {0, 1};
    } else {
        for (const ChannelRole role : channels) {
            const auto [l, r] = gains(role);
            left_.push_back(l);
            right_.push_back(r);
        }
        const float most = std::max(
            {1.0F, std::reduce(left_.begin(), left_.end()), std::reduce(right_.begin(), right_.end())});
        for (std::vector<float>* side : {&left_, &right_})
            for (float& gain : *side)
                gain /= most;
    }
}

void Stereo::mix(std::span<const float> in, std::vector<float>& out) const {
    const std::size_t channels = left_.size();
    for (std::size_t i = 0; i + channels <= in.size(); i += channels) {
        float left = 0, right = 0;
        for (std::size_t c = 0; c < channels; ++c) {
            left += left_[c] * in[i + c];
            right += right_[c] * in[i + c];
        }
        out.push_back(left);
        out.push_back(right);
    }
}

} // namespace luft::signal
