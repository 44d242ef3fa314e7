// From the candidates of every frame to one sung pitch line.
#pragma once

#include "base/curve.h"
#include "base/progress.h"
#include "voice/yin.h"

#include <array>
#include <cstdint>
#include <span>
#include <vector>

namespace luft::voice {

/// The candidates of all frames, packed: an hour takes some 25 MB.
class Lattice {
  public:
    void add_frame(std::span<const PitchCandidate> candidates);
    [[nodiscard]] std::size_t frames() const { return ends_.size(); }
    [[nodiscard]] std::span<const PitchCandidate> at(std::size_t frame) const;
    [[nodiscard]] std::span<PitchCandidate> at(std::size_t frame);
    /// Those of all frames, one after the other.
    [[nodiscard]] std::span<const PitchCandidate> all() const { return all_; }
    [[nodiscard]] std::span<PitchCandidate> all() { return all_; }

  private:
    std::vector<PitchCandidate> all_;
    std::vector<std::uint32_t> ends_; ///< by frame: end of its candidates in all_
};

/// How a pitch line moves from one 10 ms frame to the next.
struct TrackCosts {
    double into_voice = 0;   ///< log probability of starting to sing in a frame
    double out_of_voice = 0; ///< … of stopping
    double per_octave = 0;   ///< log probability lost per octave of pitch change
    double leap = 0;         ///< … lost at most, however wide the change
    double unvoiced = 0;     ///< added to the log probability of 'not sung', per frame
};

/// The most probable path through the lattice by the Viterbi algorithm (Forney 1973), as the hidden Markov
/// model of Mauch & Dixon 2014 (section 2.2) with the frame's own candidates as its pitch states and one
/// state for 'not sung'. Returns Hz by frame, NaN where not sung.
Curve<Hertz> track_pitch(const Lattice& lattice, const TrackCosts& costs, const Progress& progress = {});

/// Costs for a voice alone: changing between sung and not sung has probability 0.01 a frame as published.
TrackCosts costs_alone();
/// Costs for a voice among instruments: stronger continuity, since other pitches lure it away.
TrackCosts costs_accompanied();

} // namespace luft::voice
