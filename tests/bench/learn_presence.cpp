// Learns the weights by which sung frames are told among instruments (core/voice/presence.h), and prints
// core/voice/presence_weights.cpp.
//
//     luft-learn-presence [FIRST LAST]        seeds of the tuning songs; 1000 to 1023 unless given
#include "bench/groups.h"
#include "bench/songs.h"
#include "singer/memory_source.h"
#include "voice/likeness.h"
#include "voice/presence_weights.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <vector>

using namespace luft;
using voice::kPresenceFeatures;
using voice::kPresenceHidden;

namespace {

struct Example {
    voice::PresenceFeatures features{};
    double sung = 0; ///< 0 or 1
};

/// Every sixth frame.
void add_scene(const bench::Scene& scene, std::vector<Example>& to) {
    constexpr std::size_t kEvery = 6;
    singer::MemorySource source(scene.samples, scene.rate, scene.channels);
    const voice::FirstPass pass = voice::first_pass(source, {});
    const auto features = voice::presence_features(pass, voice::voice_likeness(pass.harmonic, pass.claims));
    const auto& truth = scene.truth.pitch->hz;
    for (std::size_t i = 0; i < std::min(features.size(), truth.size()); i += kEvery)
        to.push_back({features[i], truth.at(FrameIndex{static_cast<std::int64_t>(i)}) ? 1.0 : 0.0});
}

/// Mean and spread of each feature, so that one step size fits all.
struct Scale {
    std::array<double, kPresenceFeatures> mean{}, spread{};
};

Scale standardise(std::vector<Example>& examples) {
    Scale s;
    const auto n = static_cast<double>(examples.size());
    s.spread.fill(1);
    for (std::size_t k = 1; k < kPresenceFeatures; ++k) { // the first one is constant
        double sum = 0, square = 0;
        for (const Example& e : examples)
            sum += e.features[k], square += double(e.features[k]) * e.features[k];
        s.mean[k] = sum / n;
        s.spread[k] = std::sqrt(std::max(square / n - s.mean[k] * s.mean[k], 1e-9));
    }
    for (Example& e : examples)
        for (std::size_t k = 1; k < kPresenceFeatures; ++k)
            e.features[k] = static_cast<float>((e.features[k] - s.mean[k]) / s.spread[k]);
    return s;
}

/// Of each hidden unit its features' weights, then what it counts for; last the bias.
constexpr std::size_t kUnit = kPresenceFeatures + 1, kWeights = kPresenceHidden * kUnit + 1;
using Weights = std::array<double, kWeights>;

/// Mean log likelihood, and its gradient over the weights.
double likelihood(const std::vector<Example>& examples, const Weights& w, Weights& gradient) {
    gradient = {};
    double sum = 0;
    for (const Example& e : examples) {
        std::array<double, kPresenceHidden> hidden{};
        double odds = w.back();
        for (std::size_t h = 0; h < kPresenceHidden; ++h) {
            double a = 0;
            for (std::size_t k = 0; k < kPresenceFeatures; ++k)
                a += w[h * kUnit + k] * e.features[k];
            hidden[h] = std::tanh(a);
            odds += w[h * kUnit + kPresenceFeatures] * hidden[h];
        }
        sum -= std::log1p(std::exp(e.sung > 0 ? -odds : odds));
        const double error = e.sung - 1 / (1 + std::exp(-odds));
        gradient.back() += error;
        for (std::size_t h = 0; h < kPresenceHidden; ++h) {
            gradient[h * kUnit + kPresenceFeatures] += error * hidden[h];
            const double back = error * w[h * kUnit + kPresenceFeatures] * (1 - hidden[h] * hidden[h]);
            for (std::size_t k = 0; k < kPresenceFeatures; ++k)
                gradient[h * kUnit + k] += back * e.features[k];
        }
    }
    const auto n = static_cast<double>(examples.size());
    for (double& g : gradient)
        g /= n;
    return sum / n;
}

/// Small weights that differ, the same in every run.
Weights first_weights() {
    Weights w{};
    std::uint32_t random = 1;
    for (double& v : w) {
        random = random * 1664525U + 1013904223U;
        v = (double(random >> 8) / 16777216.0 - 0.5) / 2;
    }
    return w;
}

/// Gradient ascent with running moments (Kingma & Ba 2015) and decay of the weights.
Weights fit(const std::vector<Example>& examples) {
    constexpr int kRounds = 400;
    constexpr double kStep = 0.04, kFirst = 0.9, kSecond = 0.99, kDecay = 1e-4;
    Weights w = first_weights(), gradient{}, mean{}, square{};
    for (int round = 1; round <= kRounds; ++round) {
        const double fits = likelihood(examples, w, gradient);
        const double step = round > kRounds * 2 / 3 ? kStep / 4 : kStep;
        for (std::size_t k = 0; k < kWeights; ++k) {
            const double g = gradient[k] - kDecay * w[k];
            mean[k] = kFirst * mean[k] + (1 - kFirst) * g;
            square[k] = kSecond * square[k] + (1 - kSecond) * g * g;
            w[k] += step * (mean[k] / (1 - std::pow(kFirst, round))) /
                    (std::sqrt(square[k] / (1 - std::pow(kSecond, round))) + 1e-8);
        }
        if (round % 100 == 0) std::fprintf(stderr, "round %d: mean log likelihood %.4f\n", round, fits);
    }
    return w;
}

/// The scale goes into the weights.
void print(const Weights& w, const Scale& scale) {
    std::printf("#include \"voice/presence_weights.h\"\n\nnamespace luft::voice {\n\n"
                "const std::array<PresenceUnit, kPresenceHidden> kPresenceUnits{{\n");
    for (std::size_t h = 0; h < kPresenceHidden; ++h) {
        double constant = w[h * kUnit];
        for (std::size_t k = 1; k < kPresenceFeatures; ++k)
            constant -= w[h * kUnit + k] * scale.mean[k] / scale.spread[k];
        std::printf("{{%.5fF", constant);
        for (std::size_t k = 1; k < kPresenceFeatures; ++k)
            std::printf(", %.5fF", w[h * kUnit + k] / scale.spread[k]);
        std::printf("}, %.5fF},\n", w[h * kUnit + kPresenceFeatures]);
    }
    std::printf("}};\nconst float kPresenceBias = %.5fF;\n\n} // namespace luft::voice\n", w.back());
}

} // namespace

int main(int count, char** words) {
    const std::uint64_t first = count > 2 ? std::strtoull(words[1], nullptr, 10) : bench::kTuningSeeds;
    const std::uint64_t last = count > 2 ? std::strtoull(words[2], nullptr, 10) : first + 23;
    std::vector<Example> examples;
    for (const bench::Group& group : bench::own_groups()) {
        if (group.kind != bench::Kind::among_instruments) continue;
        for (std::uint64_t seed = first; seed <= last; ++seed)
            add_scene(group.make(seed), examples);
        std::fprintf(stderr, "%s: %zu frames so far\n", group.name.c_str(), examples.size());
    }
    const Scale scale = standardise(examples);
    print(fit(examples), scale);
}
