// The power spectrum of a frame, with what stands at the sides taken out of it.
#pragma once

#include "signal/fft.h"
#include "voice/front.h"

#include <span>
#include <vector>

namespace luft::voice {

/// Power spectrum of Hann-windowed frames. A sine of amplitude A peaks at A x A / 2 (its mean square).
class Spectrum {
  public:
    Spectrum();

    /// Measures a frame; `power()` and `focus()` are valid until the next call.
    void measure(const Frame& frame);

    /// Power by bin of the middle signal, 0 Hz to 12 kHz.
    [[nodiscard]] std::span<const float> power() const { return power_; }

    /// The same with what isn't in the centre taken out: power spectral subtraction (Boll 1979) of the side
    /// signal, bin by bin, with a floor of -20 dB. A voice mixed to the centre stays; instruments mixed to
    /// the sides give way. Equal to `power()` for mono recordings.
    [[nodiscard]] std::span<const float> focus() const { return focus_; }

    static constexpr std::size_t kBins = kFrameSamples / 2 + 1;
    static constexpr double kBinWidth = static_cast<double>(kEarRate.per_second) / kFrameSamples; ///< Hz

  private:
    std::vector<float> window_;
    float scale_ = 1;
    signal::RealFft fft_;
    std::vector<float> power_, focus_;
};

} // namespace luft::voice
