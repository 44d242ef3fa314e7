#include "voice/voicing.h"

#include "signal/statistics.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace luft::voice {
namespace {

constexpr double kSharpness = 0.1;      // share of the strongest salience that counts for a factor of e
constexpr double kPeriodicWeight = 1.5; // how much pYIN's word counts

/// By frame, the salience of its strongest candidate.
std::vector<float> strongest_of(const Lattice& harmonic) {
    std::vector<float> strongest(harmonic.frames(), 0.0F);
    for (std::size_t i = 0; i < strongest.size(); ++i)
        if (const auto c = harmonic.at(i); !c.empty()) strongest[i] = c.front().probability;
    return strongest;
}

/// The candidates of one frame as the spectrum sees them: shares that add up to 1, each by how close its
/// salience comes to the strongest one's.
std::vector<PitchCandidate> shares_of(std::span<const PitchCandidate> harmonic, double sharpness) {
    std::vector<PitchCandidate> shares(harmonic.begin(), harmonic.end());
    double sum = 0;
    for (auto& c : shares) {
        c.probability =
            static_cast<float>(std::exp((c.probability - harmonic.front().probability) / sharpness));
        sum += c.probability;
    }
    for (auto& c : shares)
        c.probability /= static_cast<float>(sum);
    return shares;
}

/// Two tones at once, as where a room sings on under the next note, have no common period though their
/// partials stand clear. Where pYIN finds less than the partials promise, the rest is shared out by the
/// spectrum.
constexpr double kTonal = 5.2, kTonalStep = 0.5; // dB of tonality; noise has 2.5, breaths up to 4.5
constexpr double kLoud = -13, kLoudStep = 2;     // dB against the loud part, under 1.2 kHz: no hisses there
constexpr double kMostByPartials = 0.9;

Voicing voicing_alone(const FirstPass& pass) {
    Voicing out;
    const std::size_t n = pass.periodic.frames();
    std::vector<float> levels(n), low(n);
    for (std::size_t i = 0; i < n; ++i) {
        levels[i] = static_cast<float>(pass.texture.level_at(i).value());
        low[i] = static_cast<float>(pass.texture.low_level_at(i).value());
    }
    const double loud = signal::quantile(levels, 0.9).value_or(0);
    const double loud_low = signal::quantile(low, 0.9).value_or(0);
    const double sharpness =
        kSharpness * std::max(signal::quantile(strongest_of(pass.harmonic), 0.95).value_or(0), 1e-9);
    std::vector<PitchCandidate> candidates;
    for (std::size_t i = 0; i < n; ++i) {
        const double presence = signal::logistic((levels[i] - (loud - 37)) / 2);
        double sum = 0;
        const auto periodic = pass.periodic.at(i);
        candidates.assign(periodic.begin(), periodic.end());
        for (auto& c : candidates) {
            c.probability *= static_cast<float>(presence);
            sum += c.probability;
        }
        const double promised = kMostByPartials *
                                signal::logistic((pass.texture.tonality()[i] - kTonal) / kTonalStep) *
                                signal::logistic((low[i] - (loud_low + kLoud)) / kLoudStep);
        if (sum < promised && !pass.harmonic.at(i).empty()) {
            for (PitchCandidate c : shares_of(pass.harmonic.at(i), sharpness)) {
                c.probability *= static_cast<float>(promised - sum);
                candidates.push_back(c);
            }
            sum = promised;
        }
        out.lattice.add_frame(candidates);
        out.probability.push(Share(sum));
    }
    return out;
}

/// The threshold that parts the values best into two classes (Otsu 1979): greatest variance between them.
double parting(std::span<const float> values, double most) {
    constexpr std::size_t kBins = 100;
    std::array<double, kBins> histogram{};
    for (const float v : values)
        ++histogram[std::min(kBins - 1, static_cast<std::size_t>(std::max(0.0, v / most) * kBins))];
    double all = 0, count = 0;
    for (std::size_t b = 0; b < kBins; ++b) {
        all += histogram[b] * static_cast<double>(b);
        count += histogram[b];
    }
    double below = 0, below_sum = 0, best = -1, at = 0;
    for (std::size_t b = 0; b + 1 < kBins; ++b) {
        below += histogram[b];
        below_sum += histogram[b] * static_cast<double>(b);
        if (below == 0 || below == count) continue;
        const double apart = below_sum / below - (all - below_sum) / (count - below);
        const double between = below * (count - below) * apart * apart;
        if (between > best) {
            best = between;
            at = static_cast<double>(b) + 1;
        }
    }
    return most * at / kBins;
}

/// Saliences become probabilities: how sure it is that there is a voice at all by the strongest one, shared
/// out by how close the others come and by what pYIN makes of the same pitch. Constants tuned on accompanied
/// scenes of the project's own singer.
Voicing voicing_accompanied(const FirstPass& pass) {
    Voicing out{{}, pass.harmonic};
    const std::size_t n = pass.harmonic.frames();
    std::vector<float> strongest(n, 0.0F);
    for (std::size_t i = 0; i < n; ++i)
        if (const auto c = pass.harmonic.at(i); !c.empty()) strongest[i] = c.front().probability;
    const double most = std::max(signal::quantile(strongest, 0.95).value_or(0), 1e-9);
    const double threshold = std::clamp(parting(strongest, most), 0.4 * most, 0.7 * most);
    const double sharpness = kSharpness * most;
    for (std::size_t i = 0; i < n; ++i) {
        auto candidates = out.lattice.at(i);
        if (candidates.empty()) {
            out.probability.push(Share(0));
            continue;
        }
        const double sung = signal::logistic((strongest[i] - 0.75 * threshold) / (0.08 * most));
        double sum = 0;
        for (auto& c : candidates) {
            double periodic = 0;
            for (const auto& y : pass.periodic.at(i))
                if (std::abs(interval(Hertz(y.hz), Hertz(c.hz)).value()) < 50)
                    periodic = std::max<double>(periodic, y.probability);
            c.probability = static_cast<float>(
                std::exp((c.probability - strongest[i]) / sharpness + kPeriodicWeight * periodic));
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
