#include "voice/voicing.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {
namespace {

Voicing voicing_alone(const FirstPass& pass) {
    Voicing out{{}, pass.periodic};
    const std::size_t n = pass.periodic.frames();
    std::vector<float> levels(n);
    for (std::size_t i = 0; i < n; ++i)
        levels[i] = static_cast<float>(pass.texture.level_at(i).value());
    const double loud = signal::quantile(levels, 0.9).value_or(0);
    for (std::size_t i = 0; i < n; ++i) {
        const double presence = signal::logistic((levels[i] - (loud - 37)) / 2);
        double sum = 0;
        for (auto& c : out.lattice.at(i)) {
            c.probability *= static_cast<float>(presence);
            sum += c.probability;
        }
        out.probability.push(Share(sum));
    }
    return out;
}

/// Saliences become probabilities: how sure it is that there is a voice at all by the strongest one, shared
/// out by how close the others come. Constants tuned on the project's accompanied scenes (tests/bench).
Voicing voicing_accompanied(const FirstPass& pass) {
    constexpr double kSharpness = 0.03;
    Voicing out{{}, pass.harmonic};
    const std::size_t n = pass.harmonic.frames();
    std::vector<float> strongest(n, 0.0F);
    for (std::size_t i = 0; i < n; ++i)
        if (const auto c = pass.harmonic.at(i); !c.empty()) strongest[i] = c.front().probability;
    const double usual = signal::quantile(strongest, 0.5).value_or(0);
    for (std::size_t i = 0; i < n; ++i) {
        auto candidates = out.lattice.at(i);
        if (candidates.empty()) {
            out.probability.push(Share(0));
            continue;
        }
        const double sung = signal::logistic((strongest[i] - usual + 0.05) / 0.03);
        double sum = 0;
        for (auto& c : candidates) {
            c.probability = static_cast<float>(std::exp((c.probability - strongest[i]) / kSharpness));
            sum += c.probability;
        }
        for (auto& c : candidates)
            c.probability *= static_cast<float>(0.98 * sung / sum);
        out.probability.push(Share(sung));
    }
    return out;
}

} // namespace

Voicing find_voicing(const FirstPass& pass, Setting setting) {
    return setting == Setting::alone ? voicing_alone(pass) : voicing_accompanied(pass);
}

} // namespace luft::voice
