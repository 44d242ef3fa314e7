#include "voice/pitch_track.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace luft::voice {

void Lattice::add_frame(std::span<const PitchCandidate> candidates) {
    all_.insert(all_.end(), candidates.begin(), candidates.end());
    ends_.push_back(static_cast<std::uint32_t>(all_.size()));
}

std::span<const PitchCandidate> Lattice::at(std::size_t frame) const {
    const std::size_t begin = frame == 0 ? 0 : ends_[frame - 1];
    return std::span(all_).subspan(begin, ends_[frame] - begin);
}

std::span<PitchCandidate> Lattice::at(std::size_t frame) {
    const std::size_t begin = frame == 0 ? 0 : ends_[frame - 1];
    return std::span(all_).subspan(begin, ends_[frame] - begin);
}

TrackCosts costs_alone() {
    return {.into_voice = std::log(0.01),
            .out_of_voice = std::log(0.01),
            .per_octave = -12,
            .leap = -9,
            .unvoiced = -0.5};
}

TrackCosts costs_accompanied() {
    return {.into_voice = std::log(0.003),
            .out_of_voice = std::log(0.003),
            .per_octave = -18,
            .leap = -8,
            .unvoiced = 0};
}

Curve<Hertz> track_pitch(const Lattice& lattice, const TrackCosts& costs, const Progress& progress) {
    constexpr std::uint8_t kUnvoiced = 255; // state index of 'not sung' in the back pointers
    const std::size_t n = lattice.frames();
    Curve<Hertz> line(n);
    if (n == 0) return line;
    std::vector<std::uint8_t> back;       // one per candidate, in lattice order
    std::vector<std::uint8_t> back_quiet; // one per frame, for 'not sung'
    std::vector<double> before, now;
    double quiet_before = 0;
    for (std::size_t i = 0; i < n; ++i) {
        if (i % 4096 == 0)
            progress.step(static_cast<double>(i) / static_cast<double>(n), "following the pitch");
        const auto candidates = lattice.at(i);
        double sung = 0;
        for (const auto& c : candidates)
            sung += c.probability;
        const double quiet_here = std::log(std::max(1 - sung, 1e-4)) + costs.unvoiced;
        now.assign(candidates.size(), 0);
        const auto earlier = i == 0 ? std::span<const PitchCandidate>() : lattice.at(i - 1);
        std::uint8_t from = kUnvoiced;
        double best = quiet_before + std::log1p(-std::exp(costs.into_voice));
        for (std::size_t j = 0; j < earlier.size(); ++j)
            if (const double p = before[j] + costs.out_of_voice; p > best) {
                best = p;
                from = static_cast<std::uint8_t>(j);
            }
        const double quiet_now = best + quiet_here;
        back_quiet.push_back(from);
        for (std::size_t c = 0; c < candidates.size(); ++c) {
            from = kUnvoiced;
            best = quiet_before + costs.into_voice;
            for (std::size_t j = 0; j < earlier.size(); ++j) {
                const double octaves = std::abs(std::log2(candidates[c].hz / earlier[j].hz));
                const double p = before[j] + std::max(costs.per_octave * octaves, costs.leap);
                if (p > best) {
                    best = p;
                    from = static_cast<std::uint8_t>(j);
                }
            }
            back.push_back(from);
            now[c] = best + std::log(std::max(candidates[c].probability, 1e-6F));
        }
        before.swap(now);
        quiet_before = quiet_now;
    }
    // Walk back from the better end.
    std::uint8_t state = kUnvoiced;
    double best = quiet_before;
    for (std::size_t j = 0; j < before.size(); ++j)
        if (before[j] > best) {
            best = before[j];
            state = static_cast<std::uint8_t>(j);
        }
    std::size_t end = back.size();
    for (std::size_t i = n; i-- > 0;) {
        const auto candidates = lattice.at(i);
        const std::size_t begin = end - candidates.size();
        if (state == kUnvoiced) {
            state = back_quiet[i];
        } else {
            line.set(i, Hertz(candidates[state].hz));
            state = back[begin + state];
        }
        end = begin;
    }
    return line;
}

} // namespace luft::voice
