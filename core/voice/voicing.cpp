#include "voice/voicing.h"

#include "signal/statistics.h"
#include "voice/likeness.h"

#include <algorithm>
#include <array>
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

/// The value that parts the others best into two classes (Otsu 1979): greatest variance between them. Values
/// beyond +-`most` count as that.
double parting(std::span<const float> values, double most) {
    constexpr std::size_t kBins = 100;
    std::array<double, kBins> histogram{};
    double all = 0;
    for (const float v : values) {
        const double place = (std::clamp<double>(v, -most, most) + most) / (2 * most) * kBins;
        const std::size_t bin = std::min(kBins - 1, static_cast<std::size_t>(place));
        ++histogram[bin];
        all += static_cast<double>(bin);
    }
    const auto count = static_cast<double>(values.size());
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
    return (2 * at / kBins - 1) * most;
}

/// Log odds become probabilities; 'nobody sings' has odds 1. Returns by frame the probability that somebody
/// does.
Curve<Share> make_probabilities(std::span<const float> odds, double towards_sung, Lattice& lattice) {
    Curve<Share> probability;
    auto all = lattice.all();
    for (std::size_t i = 0, first = 0; i < lattice.frames(); ++i) {
        const std::size_t count = lattice.at(i).size();
        double most = 0;
        for (std::size_t c = 0; c < count; ++c)
            most = std::max(most, odds[first + c] + towards_sung);
        double sung = 0;
        for (std::size_t c = 0; c < count; ++c)
            sung += std::exp(odds[first + c] + towards_sung - most);
        const double sum = sung + std::exp(-most);
        for (std::size_t c = 0; c < count; ++c)
            all[first + c].probability =
                static_cast<float>(std::exp(odds[first + c] + towards_sung - most) / sum);
        probability.push(Share(sung / sum));
        first += count;
    }
    return probability;
}

/// Log odds along the likeliest line through the whole recording, sung or not, smoothed over 70 ms.
std::vector<float> odds_of_line(std::span<const float> odds, Lattice scratch) {
    constexpr double kAlwaysSung = 12;
    make_probabilities(odds, kAlwaysSung, scratch);
    const Curve<Hertz> line = track_pitch(scratch, costs_accompanied());
    std::vector<float> along;
    for (std::size_t i = 0, first = 0; i < scratch.frames(); ++i) {
        const auto here = scratch.at(i);
        for (std::size_t c = 0; c < here.size(); ++c)
            if (here[c].hz == line.raw()[i]) along.push_back(odds[first + c]);
        first += here.size();
    }
    return signal::running_mean(along, 3);
}

/// How sure voice_likeness is differs from recording to recording: where its odds along the pitch line part
/// into sung and not sung sets the threshold, held back towards the middle. Constants tuned on other
/// songs of the project's singer over bands, and checked on a few mixed recordings.
Voicing voicing_accompanied(const FirstPass& pass) {
    constexpr double kMostOdds = 8, kTowardsSung = 1.4, kFollow = 0.7, kLeast = 0.5, kMost = 3.0;
    Voicing out{{}, pass.harmonic};
    const std::vector<float> odds = voice_likeness(pass.harmonic, pass.claims);
    const double threshold = parting(odds_of_line(odds, out.lattice), kMostOdds);
    // What is told as probability isn't pushed towards 'sung'.
    out.probability = make_probabilities(odds, 0, out.lattice);
    make_probabilities(odds, std::clamp(kTowardsSung - kFollow * threshold, kLeast, kMost), out.lattice);
    return out;
}

} // namespace

Voicing find_voicing(const FirstPass& pass, Setting setting) {
    return setting == Setting::alone ? voicing_alone(pass) : voicing_accompanied(pass);
}

} // namespace luft::voice
