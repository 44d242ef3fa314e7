// Pitch candidates of a frame by probabilistic YIN.
#pragma once

#include "signal/fft.h"
#include "voice/front.h"

#include <span>
#include <vector>

namespace luft::voice {

/// The range in which sung pitch is looked for: from a low bass's A1 to above a soprano's F6.
inline constexpr Hertz kLowestPitch{55};
inline constexpr Hertz kHighestPitch{1400};

/// A possible pitch of one frame with the probability that it is the sung one.
struct PitchCandidate {
    float hz = 0;
    float probability = 0;
};

/// Candidates by pYIN: the cumulative mean normalised difference function of YIN (de Cheveigné & Kawahara
/// 2002, eqs. 1-8, with parabolic interpolation), evaluated for a hundred thresholds weighted by a beta(2,
/// 18) prior (mean 0.2, the widest of the published three: breathy and reverberant singing has shallow dips);
/// the first dip under a threshold takes that threshold's weight, and where none is under it the deepest dip
/// takes a hundredth of it (Mauch & Dixon 2014, section 2.1). The probabilities add up to 1 at most; the rest
/// is the probability that the frame has no pitch. Works on 1024 samples (43 ms) against their shifts. Not
/// for several voices at once.
class Yin {
  public:
    Yin();

    /// `frame`: kFrameSamples at kEarRate. Candidates in order of falling frequency; valid until the next
    /// call.
    std::span<const PitchCandidate> candidates(std::span<const float> frame);

    /// Depth of the deepest dip of the last frame, about 0 (a perfect period) to 1 (none).
    [[nodiscard]] double aperiodicity() const { return aperiodicity_; }

  private:
    void difference(std::span<const float> frame);

    signal::RealFft window_, shifted_;
    std::vector<float> normalised_; ///< d' by lag
    std::vector<PitchCandidate> found_;
    std::vector<double> prior_;
    double aperiodicity_ = 1;
};

} // namespace luft::voice
