#include "tape/stereo_resampler.h"

#include <algorithm>
#include <array>

namespace luft::tape {
namespace {

using Sides = std::array<std::vector<float>, 2>;

void append_woven(const Sides& sides, std::vector<float>& out) {
    for (std::size_t i = 0; i < std::min(sides[0].size(), sides[1].size()); ++i) {
        out.push_back(sides[0][i]);
        out.push_back(sides[1][i]);
    }
}

} // namespace

StereoResampler::StereoResampler(SampleRate from, SampleRate to) {
    if (from == to) return;
    sides_.emplace_back(from, to);
    sides_.emplace_back(from, to);
}

void StereoResampler::process(std::span<const float> stereo, std::vector<float>& out) {
    if (sides_.empty()) {
        out.insert(out.end(), stereo.begin(), stereo.end());
        return;
    }
    Sides made;
    std::vector<float> in;
    for (std::size_t side = 0; side < sides_.size(); ++side) {
        in.clear();
        for (std::size_t i = side; i < stereo.size(); i += 2)
            in.push_back(stereo[i]);
        sides_[side].process(in, made[side]);
    }
    append_woven(made, out);
}

void StereoResampler::finish(std::vector<float>& out) {
    if (sides_.empty()) return;
    Sides made;
    for (std::size_t side = 0; side < sides_.size(); ++side)
        sides_[side].finish(made[side]);
    append_woven(made, out);
}

} // namespace luft::tape
