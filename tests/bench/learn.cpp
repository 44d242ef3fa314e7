// Learns the weights by which a singer's pitch is told from a band's (core/voice/likeness.h), and prints
// them.
//
//     luft-learn [FIRST LAST]        seeds of the tuning songs; 1000 to 1023 unless given
#include "bench/groups.h"
#include "bench/songs.h"
#include "singer/memory_source.h"
#include "voice/first_pass.h"
#include "voice/likeness.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <vector>

using namespace luft;
using voice::kLikenessFeatures;
using Weights = std::array<double, kLikenessFeatures>;

namespace {

/// The candidates of a frame, and which of them is sung: its place, or their number for 'nobody'.
struct Example {
    std::size_t first = 0, count = 0, sung = 0;
};

struct Examples {
    std::vector<voice::LikenessFeatures> features;
    std::vector<Example> frames;
};

/// Every third frame. Those whose sung pitch isn't among the candidates teach nothing.
void add_scene(const bench::Scene& scene, Examples& to) {
    constexpr std::size_t kEvery = 3;
    constexpr double kNearCents = 50;
    singer::MemorySource source(scene.samples, scene.rate, scene.channels);
    const voice::FirstPass pass = voice::first_pass(source, {});
    std::vector<voice::LikenessFeatures> all(pass.claims.size());
    voice::for_each_candidate(pass.harmonic, pass.claims,
                              [&](std::size_t c, const voice::LikenessFeatures& f) { all[c] = f; });
    const auto& truth = scene.truth.pitch->hz;
    std::size_t first = 0;
    for (std::size_t i = 0; i < std::min(pass.harmonic.frames(), truth.size()); ++i) {
        const auto here = pass.harmonic.at(i);
        const std::size_t begin = first;
        first += here.size();
        if (i % kEvery != 0) continue;
        Example e{to.features.size(), here.size(), here.size()};
        if (const auto hz = truth.at(FrameIndex{static_cast<std::int64_t>(i)})) {
            for (std::size_t c = 0; c < here.size(); ++c)
                if (std::abs(interval(*hz, Hertz(here[c].hz)).value()) < kNearCents) e.sung = c;
            if (e.sung == here.size()) continue;
        }
        to.frames.push_back(e);
        to.features.insert(to.features.end(), all.begin() + static_cast<std::ptrdiff_t>(begin),
                           all.begin() + static_cast<std::ptrdiff_t>(first));
    }
}

/// Spread of each feature, so that one step size fits all.
Weights spread_of(const Examples& examples) {
    Weights sum{}, square{}, spread{};
    for (const auto& f : examples.features)
        for (std::size_t k = 0; k < kLikenessFeatures; ++k)
            sum[k] += f[k], square[k] += double(f[k]) * f[k];
    const auto n = static_cast<double>(examples.features.size());
    for (std::size_t k = 0; k < kLikenessFeatures; ++k)
        spread[k] = k == 0 ? 1 : std::sqrt(std::max(square[k] / n - sum[k] * sum[k] / (n * n), 1e-9));
    return spread;
}

/// Mean log likelihood, and its gradient over the weights.
double likelihood(const Examples& examples, const Weights& w, Weights& gradient) {
    gradient = {};
    double sum = 0;
    std::vector<double> odds;
    for (const Example& e : examples.frames) {
        odds.assign(e.count + 1, 0.0); // the last one: nobody
        for (std::size_t c = 0; c < e.count; ++c)
            for (std::size_t k = 0; k < kLikenessFeatures; ++k)
                odds[c] += w[k] * examples.features[e.first + c][k];
        const double most = *std::ranges::max_element(odds);
        double total = 0;
        for (const double o : odds)
            total += std::exp(o - most);
        sum += odds[e.sung] - most - std::log(total);
        for (std::size_t c = 0; c < e.count; ++c) {
            const double error = (c == e.sung ? 1 : 0) - std::exp(odds[c] - most) / total;
            for (std::size_t k = 0; k < kLikenessFeatures; ++k)
                gradient[k] += error * examples.features[e.first + c][k];
        }
    }
    const auto n = static_cast<double>(examples.frames.size());
    for (double& g : gradient)
        g /= n;
    return sum / n;
}

/// Gradient ascent with running moments (Kingma & Ba 2015).
Weights fit(const Examples& examples) {
    constexpr int kRounds = 500;
    constexpr double kStep = 0.05, kFirst = 0.9, kSecond = 0.99;
    const Weights spread = spread_of(examples);
    Weights w{}, gradient{}, mean{}, square{};
    for (int round = 1; round <= kRounds; ++round) {
        const double fits = likelihood(examples, w, gradient);
        for (std::size_t k = 0; k < kLikenessFeatures; ++k) {
            const double g = gradient[k] * spread[k];
            mean[k] = kFirst * mean[k] + (1 - kFirst) * g;
            square[k] = kSecond * square[k] + (1 - kSecond) * g * g;
            const double step = round > kRounds * 2 / 3 ? kStep / 4 : kStep;
            w[k] += step / spread[k] * (mean[k] / (1 - std::pow(kFirst, round))) /
                    (std::sqrt(square[k] / (1 - std::pow(kSecond, round))) + 1e-8);
        }
        if (round % 100 == 0) std::fprintf(stderr, "round %d: mean log likelihood %.4f\n", round, fits);
    }
    return w;
}

} // namespace

int main(int count, char** words) {
    const std::uint64_t first = count > 2 ? std::strtoull(words[1], nullptr, 10) : bench::kTuningSeeds;
    const std::uint64_t last = count > 2 ? std::strtoull(words[2], nullptr, 10) : first + 23;
    Examples examples;
    for (const bench::Group& group : bench::own_groups()) {
        if (group.kind != bench::Kind::among_instruments) continue;
        for (std::uint64_t seed = first; seed <= last; ++seed)
            add_scene(group.make(seed), examples);
        std::fprintf(stderr, "%s: %zu frames so far\n", group.name.c_str(), examples.frames.size());
    }
    for (const double w : fit(examples))
        std::printf("%.4f, ", w);
    std::printf("\n");
}
