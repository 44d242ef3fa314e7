#include "voice/yin.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {
namespace {

constexpr std::size_t kWindow = 1024;
constexpr std::size_t kFft = 2048;
constexpr std::size_t kShortestLag = 17; // kEarRate / kHighestPitch
constexpr std::size_t kLongestLag = 437; // kEarRate / kLowestPitch, rounded up
constexpr int kThresholds = 100;
constexpr double kNoDipShare = 0.01;
constexpr std::size_t kStart =
    kFrameSamples / 2 - kWindow / 2 - 60; // centred for a period of 120 samples (200 Hz)

/// Weights of the thresholds 0.01, 0.02 … 1: the beta(2, 8) density x (1 - x)^7, scaled to add up to 1.
std::vector<double> threshold_prior() {
    std::vector<double> weights;
    double sum = 0;
    for (int i = 1; i <= kThresholds; ++i) {
        const double x = static_cast<double>(i) / kThresholds;
        weights.push_back(x * std::pow(1 - x, 7));
        sum += weights.back();
    }
    for (double& w : weights)
        w /= sum;
    return weights;
}

struct Dip {
    double lag; ///< samples, and parts of one
    float depth;
};

/// The dip around a lowest value `c` between its neighbours, by the parabola through the three (YIN's step
/// 5). Its depth counts as much as its place: a period that falls between two samples would look shallower
/// than its double, which falls on one.
Dip dip_at(std::size_t lag, float l, float c, float r) {
    const float bend = l - 2 * c + r;
    const float shift = bend > 0 ? std::clamp(0.5F * (l - r) / bend, -0.5F, 0.5F) : 0.0F;
    return {static_cast<double>(lag) + shift, std::max(c - 0.25F * (l - r) * shift, 0.0F)};
}

/// A partial that a formant lifts, or the ripple of a formant itself, makes a shallow dip before that of the
/// period. Each dip's weight is scaled down by how much shallower it is than the deepest one, and what it
/// loses goes to the others in proportion.
void favour_deep_dips(const std::vector<Dip>& dips, float deepest, std::vector<double>& weight) {
    // Depth that costs a factor of e; tuned on songs 1 to 5 of five voice types of tests/scenes, dry and in
    // rooms: less makes sub-octaves of reverberant tones, more makes octaves where F1 lifts the second
    // partial.
    constexpr double kShallower = 0.02;
    double before = 0, after = 0;
    for (std::size_t i = 0; i < dips.size(); ++i) {
        before += weight[i];
        weight[i] *= std::exp((deepest - dips[i].depth) / kShallower);
        after += weight[i];
    }
    if (after > 0)
        for (double& w : weight)
            w *= before / after;
}

} // namespace

Yin::Yin() : window_(kFft), shifted_(kFft), normalised_(kLongestLag + 2, 1.0F), prior_(threshold_prior()) {}

void Yin::difference(std::span<const float> frame) {
    const auto x = frame.subspan(kStart, kWindow + kLongestLag + 1);
    auto a = window_.samples();
    auto b = shifted_.samples();
    std::fill(a.begin(), a.end(), 0.0F);
    std::fill(b.begin(), b.end(), 0.0F);
    std::copy_n(x.begin(), kWindow, a.begin());
    std::copy(x.begin(), x.end(), b.begin());
    window_.forward();
    shifted_.forward();
    auto fa = window_.spectrum();
    auto fb = shifted_.spectrum();
    for (std::size_t k = 0; k < fa.size(); ++k)
        fb[k] *= std::conj(fa[k]);
    shifted_.backward();
    const auto correlation = shifted_.samples();

    double energy0 = 0;
    for (std::size_t i = 0; i < kWindow; ++i)
        energy0 += static_cast<double>(x[i]) * x[i];
    double energy = energy0;
    double sum = 0;
    normalised_[0] = 1;
    for (std::size_t lag = 1; lag <= kLongestLag + 1; ++lag) {
        const double leaves = x[lag - 1];
        const double enters = lag + kWindow - 1 < x.size() ? x[lag + kWindow - 1] : 0.0F;
        energy += enters * enters - leaves * leaves;
        const double r = correlation[lag] / static_cast<double>(kFft);
        const double d = std::max(energy0 + energy - 2 * r, 0.0);
        sum += d;
        normalised_[lag] = sum > 0 ? static_cast<float>(d * static_cast<double>(lag) / sum) : 1.0F;
    }
}

std::span<const PitchCandidate> Yin::candidates(std::span<const float> frame) {
    found_.clear();
    aperiodicity_ = 1;
    difference(frame);
    std::vector<Dip> dips;
    for (std::size_t lag = kShortestLag; lag <= kLongestLag; ++lag) {
        const float d = normalised_[lag];
        if (d < normalised_[lag - 1] && d <= normalised_[lag + 1] && d < 1)
            dips.push_back(dip_at(lag, normalised_[lag - 1], d, normalised_[lag + 1]));
    }
    if (dips.empty()) return found_;
    const auto deepest = std::ranges::min_element(dips, {}, &Dip::depth);
    aperiodicity_ = deepest->depth;

    std::vector<double> weight(dips.size(), 0.0);
    for (int i = 0; i < kThresholds; ++i) {
        const double threshold = static_cast<double>(i + 1) / kThresholds;
        const auto first = std::ranges::find_if(dips, [&](const Dip& d) { return d.depth < threshold; });
        if (first != dips.end())
            weight[static_cast<std::size_t>(first - dips.begin())] += prior_[static_cast<std::size_t>(i)];
        else
            weight[static_cast<std::size_t>(deepest - dips.begin())] +=
                kNoDipShare * prior_[static_cast<std::size_t>(i)];
    }
    favour_deep_dips(dips, deepest->depth, weight);
    for (std::size_t i = 0; i < dips.size(); ++i) {
        if (weight[i] < 1e-3) continue;
        const double hz = kEarRate.per_second / dips[i].lag;
        found_.push_back({static_cast<float>(hz), static_cast<float>(weight[i])});
    }
    return found_;
}

} // namespace luft::voice
