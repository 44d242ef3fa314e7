#include "voice/likeness.h"

#include "signal/statistics.h"
#include "voice/contours.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace luft::voice {
namespace {

constexpr std::uint32_t kAround = 25; // frames to either side
constexpr LikenessFeatures kWeights{-7.5941F, 8.1736F,  0.0961F,  0.2056F, -0.0276F, -0.0034F, 0.0807F,
                                    -0.1301F, -0.0493F, -0.4056F, 1.2038F, 0.3112F,  0.4475F,  -0.4037F};

/// What is averaged along a contour; running sums of it.
struct Sums {
    double ratio = 0, level = 0, high = 0, between = 0, sub_octave = 0, odd = 0;
    double octaves = 0, octaves_squared = 0, step = 0;
};

Sums plus(Sums s, const Claim& claim, double ratio, double octaves, double step) {
    s.ratio += ratio;
    s.level += claim.level;
    s.high += claim.high;
    s.between += claim.between;
    s.sub_octave += claim.sub_octave;
    s.odd += claim.odd;
    s.octaves += octaves;
    s.octaves_squared += octaves * octaves;
    s.step += step;
    return s;
}

LikenessFeatures features_of(const Sums& before, const Sums& after, double count, double level_now,
                             double octaves, double loud) {
    constexpr double kSubOctaveFrom = 7, kOddFrom = 10; // dB
    const auto mean = [&](double Sums::*part) { return (after.*part - before.*part) / count; };
    const double sub_octave = mean(&Sums::sub_octave), odd = mean(&Sums::odd), place = mean(&Sums::octaves);
    const double spread = 1200 * std::sqrt(std::max(mean(&Sums::octaves_squared) - place * place, 0.0));
    const std::array<double, kLikenessFeatures> all{1,
                                                    mean(&Sums::ratio),
                                                    mean(&Sums::level) - loud,
                                                    level_now - loud,
                                                    mean(&Sums::high),
                                                    mean(&Sums::between),
                                                    sub_octave,
                                                    std::max(sub_octave - kSubOctaveFrom, 0.0),
                                                    odd,
                                                    std::max(kOddFrom - odd, 0.0),
                                                    std::log(spread + 2),
                                                    std::log(mean(&Sums::step) + 1),
                                                    octaves,
                                                    octaves * octaves};
    LikenessFeatures out{};
    std::ranges::transform(all, out.begin(), [](double v) { return static_cast<float>(v); });
    return out;
}

} // namespace

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

void for_each_candidate(const Lattice& lattice, std::span<const Claim> claims,
                        const std::function<void(std::size_t, const LikenessFeatures&)>& call) {
    constexpr double kMostStep = 40; // cents; a leap of the line is no movement of the voice
    const auto all = lattice.all();
    const double loud = loud_level(lattice, claims);
    const auto octaves_at = [&](const ContourPoint& p) { return std::log2(all[p.candidate].hz / 440.0); };
    std::vector<Sums> sums;
    for (const Contour& contour : link_contours(lattice)) {
        sums.assign(1, {});
        for (std::size_t k = 0; k < contour.size(); ++k) {
            const ContourPoint& p = contour[k];
            const double strongest = std::max(lattice.at(p.frame).front().probability, 1e-9F);
            const double step =
                k == 0 ? 0 : std::min(1200 * std::abs(octaves_at(p) - octaves_at(contour[k - 1])), kMostStep);
            sums.push_back(plus(sums.back(), claims[p.candidate], all[p.candidate].probability / strongest,
                                octaves_at(p), step));
        }
        std::size_t from = 0, to = 0;
        for (const ContourPoint& p : contour) {
            while (contour[from].frame + kAround < p.frame)
                ++from;
            while (to < contour.size() && contour[to].frame <= p.frame + kAround)
                ++to;
            call(p.candidate, features_of(sums[from], sums[to], static_cast<double>(to - from),
                                          claims[p.candidate].level, octaves_at(p), loud));
        }
    }
}

std::vector<float> voice_likeness(const Lattice& lattice, std::span<const Claim> claims) {
    std::vector<float> odds(claims.size(), 0.0F);
    for_each_candidate(lattice, claims, [&](std::size_t candidate, const LikenessFeatures& features) {
        odds[candidate] = std::inner_product(features.begin(), features.end(), kWeights.begin(), 0.0F);
    });
    return odds;
}

} // namespace luft::voice
