#include "voice/voicing.h"

#include "signal/statistics.h"
#include "voice/chances.h"
#include "voice/likeness.h"
#include "voice/presence.h"

#include <algorithm>
#include <cmath>

namespace luft::voice {
namespace {

constexpr double kSharpness = 0.1; // share of the strongest salience that counts for a factor of e

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

Voicing voicing_alone(const FirstPass& pass, const Progress& progress) {
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
        if (i % 4096 == 0)
            progress.step(static_cast<double>(i) / static_cast<double>(n), "finding where somebody sings");
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

/// The candidates of a frame share what voice_presence gives to the frame as their likeness says. Its push
/// towards 'sung' lies between 0.8, which found more ends of phrases, and 1.2,
/// which kept more sung frames (seeds 1024 to 1031).
Voicing voicing_accompanied(const FirstPass& pass, const Progress& progress) {
    constexpr double kTowardsSung = 1.0;
    Voicing out{{}, pass.harmonic};
    progress.step(0, "telling the voice from instruments");
    std::vector<float> likeness = voice_likeness(pass.harmonic, pass.claims);
    const std::vector<float> odds = voice_presence(pass, std::move(likeness), progress.part(0.2, 0.9));
    // What is told as probability isn't pushed towards 'sung'.
    progress.step(0.9, "telling the voice from instruments");
    out.probability = make_probabilities(odds, 0, out.lattice);
    make_probabilities(odds, kTowardsSung, out.lattice);
    return out;
}

} // namespace

Voicing find_voicing(const FirstPass& pass, Setting setting, const Progress& progress) {
    return setting == Setting::alone ? voicing_alone(pass, progress) : voicing_accompanied(pass, progress);
}

} // namespace luft::voice
