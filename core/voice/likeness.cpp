#include "voice/likeness.h"

#include "signal/statistics.h"
#include "voice/contours.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {
namespace {

constexpr std::uint32_t kAround = 25; // frames to either side

/// What is averaged along a contour.
struct Features {
    double ratio = 0, level = 0, between = 0, sub_octave = 0, odd = 0, pitch = 0, pitch_squared = 0;

    Features& operator+=(const Features& o) {
        ratio += o.ratio, level += o.level, between += o.between, sub_octave += o.sub_octave, odd += o.odd;
        pitch += o.pitch, pitch_squared += o.pitch_squared;
        return *this;
    }
    [[nodiscard]] Features mean_since(const Features& o, double count) const {
        return {(ratio - o.ratio) / count,
                (level - o.level) / count,
                (between - o.between) / count,
                (sub_octave - o.sub_octave) / count,
                (odd - o.odd) / count,
                (pitch - o.pitch) / count,
                (pitch_squared - o.pitch_squared) / count};
    }
};

/// `level` is that of the frame itself, against the recording's loud frames; `octaves` from A4 = 440 Hz.
double log_odds(const Features& mean, double level, double octaves) {
    constexpr double kSubOctaveFrom = 7, kOddFrom = 10; // dB
    const double cents = 1200 * std::sqrt(std::max(mean.pitch_squared - mean.pitch * mean.pitch, 0.0));
    return -10.888 + 12.156 * mean.ratio + 0.2010 * mean.level + 0.2808 * level - 0.0406 * mean.between +
           0.1177 * mean.sub_octave - 0.1645 * std::max(mean.sub_octave - kSubOctaveFrom, 0.0) -
           0.0640 * mean.odd - 0.3261 * std::max(kOddFrom - mean.odd, 0.0) + 1.559 * std::log(cents + 2) -
           0.3243 * octaves - 0.6114 * octaves * octaves;
}

/// Level of the recording's loud frames: the 90th percentile of what each frame's strongest candidate has.
double loud_level(const Lattice& lattice, std::span<const Claim> claims) {
    std::vector<float> level;
    std::size_t first = 0;
    for (std::size_t i = 0; i < lattice.frames(); ++i) {
        const auto here = lattice.at(i);
        if (!here.empty()) level.push_back(claims[first].level);
        first += here.size();
    }
    return signal::quantile(level, 0.9).value_or(0);
}

} // namespace

std::vector<float> voice_likeness(const Lattice& lattice, std::span<const Claim> claims) {
    const auto all = lattice.all();
    const double loud = loud_level(lattice, claims);
    std::vector<float> odds(all.size(), 0.0F);
    std::vector<Features> sums;
    for (const Contour& contour : link_contours(lattice)) {
        sums.assign(1, {});
        for (const ContourPoint& p : contour) {
            const PitchCandidate& c = all[p.candidate];
            const Claim& claim = claims[p.candidate];
            const double octaves = std::log2(c.hz / 440.0);
            Features sum = sums.back();
            sum += {c.probability / std::max(lattice.at(p.frame).front().probability, 1e-9F),
                    claim.level - loud,
                    claim.between,
                    claim.sub_octave,
                    claim.odd,
                    octaves,
                    octaves * octaves};
            sums.push_back(sum);
        }
        std::size_t from = 0, to = 0;
        for (std::size_t k = 0; k < contour.size(); ++k) {
            while (contour[from].frame + kAround < contour[k].frame)
                ++from;
            while (to < contour.size() && contour[to].frame <= contour[k].frame + kAround)
                ++to;
            const std::uint32_t c = contour[k].candidate;
            odds[c] =
                static_cast<float>(log_odds(sums[to].mean_since(sums[from], static_cast<double>(to - from)),
                                            claims[c].level - loud, std::log2(all[c].hz / 440.0)));
        }
    }
    return odds;
}

} // namespace luft::voice
