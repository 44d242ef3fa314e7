// What breaths, onsets and offsets are found by: bands over time, and envelopes finer than the curves.
#pragma once

#include "base/units.h"
#include "signal/biquad.h"
#include "voice/front.h"
#include "voice/spectrum.h"

#include <array>
#include <span>
#include <vector>

namespace luft::voice {

/// Edges of the bands in Hz, low to high.
inline constexpr std::array<double, 11> kBandEdges = {0,    150,  400,  800,  1300, 2000,
                                                      3000, 4500, 6500, 9000, 12000};
inline constexpr std::size_t kBands = kBandEdges.size() - 1;
using BandLevels = std::array<float, kBands>; ///< dB below full scale

/// Fine envelopes have four values a frame, one every 2.5 ms.
inline constexpr int kFinePerFrame = 4;
inline constexpr Seconds kFineHop{0.0025};

/// Levels of the whole recording's middle signal; working data of the ear, not kept in a project.
class Texture {
  public:
    Texture();

    /// Takes the next frame and its spectrum.
    void add(const Frame& frame, const Spectrum& spectrum);

    [[nodiscard]] std::span<const BandLevels> bands() const { return bands_; }
    /// Level of everything, of what lies under 1.2 kHz, and of what lies over 3 kHz; value j stands for
    /// the 2.5 ms from j x 2.5 ms on.
    [[nodiscard]] std::span<const float> full() const { return full_; }
    [[nodiscard]] std::span<const float> low() const { return low_; }
    [[nodiscard]] std::span<const float> high() const { return high_; }
    /// How far a frame's spectrum from 400 Hz to 4.5 kHz stands from that of noise: in each band the level of
    /// the mean minus the mean of the levels, in dB, weighted by width (spectral flatness, Gray & Markel
    /// 1974, IEEE Trans. ASSP 22, 207). Noise has 2.5 (ten times the logarithm of e to the Euler number),
    /// partials that stand apart 8 and more, a room's tail of a sung tone too.
    [[nodiscard]] std::span<const float> tonality() const { return tonality_; }
    /// Level over 40 ms around each frame's centre.
    [[nodiscard]] Decibels level_at(std::size_t frame) const { return around(full_, frame); }
    /// The same of what lies under 1.2 kHz.
    [[nodiscard]] Decibels low_level_at(std::size_t frame) const { return around(low_, frame); }

  private:
    static Decibels around(const std::vector<float>& fine, std::size_t frame);

    std::vector<BandLevels> bands_;
    std::vector<float> tonality_;
    std::vector<float> full_, low_, high_;
    signal::Biquad low1_, low2_, high1_, high2_; ///< two of each in a row: fourth order
};

} // namespace luft::voice
