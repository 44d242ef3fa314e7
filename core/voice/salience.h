// Pitch candidates of a frame in which other instruments sound along.
#pragma once

#include "voice/yin.h"

#include <span>
#include <vector>

namespace luft::voice {

/// Candidates by harmonic summation (Hermes 1988; form of Salamon & Gomez 2012, eq. 2): the salience of a
/// pitch is the sum of the compressed spectrum at its first partials, partial h weighted by 0.65^(h - 1).
/// (With their 0.8 the sub-octave of a voice wins where chords sound between its partials.) The spectrum is
/// first whitened in part, so that bass and drums don't outweigh the voice. On a grid of 20 cents from
/// kLowestPitch to kHighestPitch.
class Salience {
  public:
    Salience();

    /// `power`: Spectrum::kBins values (the focus of Spectrum). Strongest first, at most kMost; `probability`
    /// is the salience itself, to be compared within one recording only. Valid until the next call.
    std::span<const PitchCandidate> candidates(std::span<const float> power);

    static constexpr std::size_t kMost = 10;

  private:
    void whiten(std::span<const float> power);

    std::vector<float> grid_;     ///< Hz
    std::vector<float> white_;    ///< whitened, compressed spectrum
    std::vector<double> sums_;    ///< running sums of the power, by bin
    std::vector<float> salience_; ///< by grid point
    std::vector<PitchCandidate> found_;
};

} // namespace luft::voice
