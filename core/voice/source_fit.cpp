#include "voice/source_fit.h"

#include "voice/pulse_shape.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {
namespace {

constexpr std::array<double, 10> kShapes{0.5, 0.7, 0.9, 1.1, 1.35, 1.6, 1.85, 2.1, 2.4, 2.7};
constexpr double kTop = 2600, kStep = 20; // Hz
constexpr std::size_t kGrid = static_cast<std::size_t>(kTop / kStep) + 2;
constexpr int kMostPartials = 40;

/// Gain of a resonance in dB against 0 Hz.
double resonance(double f, double centre, double bandwidth) {
    const double b = bandwidth * bandwidth / 4, c = centre * centre + b;
    return 10 * std::log10(c * c / (((f - centre) * (f - centre) + b) * ((f + centre) * (f + centre) + b)));
}

/// F3 to F5: of large, middle and small tracts (spans of the Csound manual's table of sung formants).
constexpr std::array<std::array<double, 3>, 3> kUpper{
    {{2350, 2600, 2900}, {2700, 3100, 3500}, {2850, 3700, 4900}}};

double tract_gain(double f, double f1, double f2, const std::array<double, 3>& upper) {
    double gain = resonance(f, f1, 50 + 0.05 * f1) + resonance(f, f2, 80 + 0.01 * f2);
    for (const double u : upper)
        gain += resonance(f, u, 100 + 0.05 * (u - 2300));
    return gain + resonance(f, 5600, 300) + resonance(f, 6600, 300);
}

/// Points from `low` to `high`, evenly spaced on a logarithmic scale.
std::vector<double> log_scale(double low, double high, int points) {
    std::vector<double> scale;
    for (int i = 0; i < points; ++i)
        scale.push_back(low * std::pow(high / low, static_cast<double>(i) / (points - 1)));
    return scale;
}

/// How many dB the model can be off at a frequency.
double off_at(double f) {
    return f < 1800 ? 2 : f < 2300 ? 4 : 15;
}

/// Weighted mean and standard deviation.
struct Moments {
    double weight = 0, sum = 0, square = 0;
    void add(double w, double x) {
        weight += w;
        sum += w * x;
        square += w * x * x;
    }
    [[nodiscard]] double mean() const { return sum / weight; }
    [[nodiscard]] double spread() const {
        return std::sqrt(std::max(0.0, square / weight - mean() * mean()));
    }
};

} // namespace

struct SourceFitter::Place {
    double frequency;
    float level;
    std::size_t harmonic; ///< 0 = first
    float weight;
};

SourceFitter::SourceFitter(Decibels depth, double doubt) : depth_(depth.value()), doubt_(doubt) {
    std::vector<std::array<double, 2>> low;
    for (const double f1 : log_scale(230, 950, 19))
        for (const double f2 : log_scale(560, 2700, 22))
            // Within the vowels: F2 clear of F1, and the higher F1 the lower F2 can reach.
            if (f2 > 1.45 * f1 && f2 > f1 + 150 && f2 < 4000 - 1.6 * f1) low.push_back({f1, f2});
    std::vector<std::array<double, 3>> uppers;
    for (const auto& upper : kUpper)
        for (const auto& [f1, f2] : low)
            if (f2 < 0.9 * upper[0]) {
                f1_.push_back(std::log2(f1));
                f2_.push_back(std::log2(f2));
                uppers.push_back(upper);
            }
    for (std::size_t g = 0; g < kGrid; ++g)
        for (std::size_t c = 0; c < f1_.size(); ++c)
            gains_.push_back(static_cast<float>(
                tract_gain(static_cast<double>(g) * kStep, std::exp2(f1_[c]), std::exp2(f2_[c]), uppers[c])));
    for (std::size_t s = 0; s < kPulses; ++s) {
        levels_[s] = pulse_levels(kShapes[s], kMostPartials);
        const float first = levels_[s].front();
        for (float& level : levels_[s])
            level -= first; // small numbers, so that single precision will do
        cross_[s].resize(f1_.size());
    }
    first_.resize(f1_.size());
    second_.resize(f1_.size());
    difference_.resize(f1_.size());
    error_.resize(f1_.size() * kPulses);
    surprise_.assign(f1_.size(), 0.0F);
}

bool SourceFitter::is_certain(const SourceFit& fit) {
    return fit.f1_spread < 0.12 && fit.f2_spread < 0.12 && fit.pulse_spread < 0.35;
}

void SourceFitter::remember(const SourceFit& fit) {
    vowels_.push_back({std::log2(fit.f1.value()), std::log2(fit.f2.value())});
}

void SourceFitter::expect_remembered() {
    constexpr std::size_t kFew = 50, kEnough = 500;
    if (vowels_.size() < kFew) return;
    const std::size_t step = vowels_.size() / kEnough + 1;
    constexpr double kNear = 0.1; // octaves; steps of the scales are 0.11
    std::vector<double> density(f1_.size(), 0.0);
    for (std::size_t v = 0; v < vowels_.size(); v += step)
        for (std::size_t c = 0; c < f1_.size(); ++c) {
            const double x = (f1_[c] - vowels_[v][0]) / kNear, y = (f2_[c] - vowels_[v][1]) / kNear;
            density[c] += std::exp(-0.5 * (x * x + y * y));
        }
    const double most = *std::ranges::max_element(density);
    constexpr double kElsewhere = 0.004;
    for (std::size_t c = 0; c < f1_.size(); ++c)
        surprise_[c] = static_cast<float>(-2 * std::log(kElsewhere + density[c] / most));
}

std::optional<SourceFit> SourceFitter::fit(const Partials& partials) {
    std::vector<Place> places;
    float strongest = -999;
    const auto in_reach = [&](std::size_t h) {
        return h < partials.levels.size() && h < kMostPartials &&
               static_cast<double>(h + 1) * partials.f0.value() < kTop;
    };
    for (std::size_t h = 0; in_reach(h); ++h)
        strongest = std::max(strongest, partials.levels[h]);
    for (std::size_t h = 0; in_reach(h); ++h) {
        const double f = static_cast<double>(h + 1) * partials.f0.value(), off = doubt_ * off_at(f);
        if (partials.levels[h] > static_cast<double>(strongest) - depth_)
            places.push_back({f, partials.levels[h] - strongest, h, static_cast<float>(1 / (off * off))});
    }
    if (places.size() < 3) return std::nullopt;

    // e = sum w (d - p - mean)^2 with d = level - tract, p = pulse: expanded, so that tract and pulse part.
    const std::size_t tracts = f1_.size();
    std::ranges::fill(first_, 0.0F);
    std::ranges::fill(second_, 0.0F);
    for (auto& c : cross_)
        std::ranges::fill(c, 0.0F);
    float total = 0;
    std::array<float, kPulses> pulse{}, pulse_square{};
    for (const Place& p : places) {
        const auto g = static_cast<std::size_t>(p.frequency / kStep);
        const float part = static_cast<float>(p.frequency / kStep - static_cast<double>(g));
        const float *below = &gains_[g * tracts], *above = &gains_[(g + 1) * tracts];
        total += p.weight;
        for (std::size_t c = 0; c < tracts; ++c) {
            const float d = p.level - below[c] - part * (above[c] - below[c]);
            difference_[c] = d;
            first_[c] += p.weight * d;
            second_[c] += p.weight * d * d;
        }
        for (std::size_t s = 0; s < kPulses; ++s) {
            const float level = levels_[s][p.harmonic], w = p.weight * level;
            pulse[s] += w;
            pulse_square[s] += w * level;
            float* cross = cross_[s].data();
            for (std::size_t c = 0; c < tracts; ++c)
                cross[c] += w * difference_[c];
        }
    }
    // Neighbouring partials err together: more than eight of them don't tell more.
    const float scale = std::min(1.0F, 8.0F / static_cast<float>(places.size()));
    float least = 1e30F;
    for (std::size_t s = 0; s < kPulses; ++s)
        for (std::size_t c = 0; c < tracts; ++c) {
            const float difference = first_[c] - pulse[s];
            const float e = second_[c] - 2 * cross_[s][c] + pulse_square[s] - difference * difference / total;
            error_[s * tracts + c] = e * scale + surprise_[c];
            least = std::min(least, error_[s * tracts + c]);
        }
    Moments f1, f2, shape;
    for (std::size_t s = 0; s < kPulses; ++s)
        for (std::size_t c = 0; c < tracts; ++c) {
            const float e = error_[s * tracts + c] - least;
            if (e > 30) continue;
            const double w = std::exp(-0.5F * e);
            f1.add(w, f1_[c]);
            f2.add(w, f2_[c]);
            shape.add(w, kShapes[s]);
        }
    return SourceFit{Hertz(std::exp2(f1.mean())),
                     Hertz(std::exp2(f2.mean())),
                     f1.spread(),
                     f2.spread(),
                     shape.mean(),
                     shape.spread()};
}

} // namespace luft::voice
