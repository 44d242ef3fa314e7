#include "guide/stereo.h"

#include <algorithm>
#include <numbers>

namespace luft::guide {
namespace {

struct Share {
    float left = 0, right = 0;
};

Share share(ChannelRole role) {
    constexpr float kThreeDown = static_cast<float>(1 / std::numbers::sqrt2);
    switch (role) {
    case ChannelRole::left:
        return {1, 0};
    case ChannelRole::right:
        return {0, 1};
    case ChannelRole::surround_left:
        return {kThreeDown, 0};
    case ChannelRole::surround_right:
        return {0, kThreeDown};
    case ChannelRole::low_frequency:
        return {};
    case ChannelRole::centre:
    case ChannelRole::other:
        break;
    }
    return {kThreeDown, kThreeDown};
}

std::vector<Share> shares(const std::vector<ChannelRole>& roles) {
    if (roles.size() == 1) return {{1, 1}};
    if (roles.size() == 2) return {{1, 0}, {0, 1}};
    std::vector<Share> out;
    float left = 0, right = 0;
    for (const ChannelRole role : roles) {
        out.push_back(share(role));
        left += out.back().left;
        right += out.back().right;
    }
    const float most = std::max({left, right, 1.0F});
    for (Share& s : out)
        s = {s.left / most, s.right / most};
    return out;
}

} // namespace

void append_stereo(const AudioFormat& format, std::span<const float> samples, std::vector<float>& out) {
    const std::vector<Share> mix = shares(format.channels);
    for (std::size_t at = 0; at + mix.size() <= samples.size(); at += mix.size()) {
        Share sum;
        for (std::size_t c = 0; c < mix.size(); ++c) {
            sum.left += mix[c].left * samples[at + c];
            sum.right += mix[c].right * samples[at + c];
        }
        out.push_back(sum.left);
        out.push_back(sum.right);
    }
}

} // namespace luft::guide
