// How firmly the folds close, from breathy to firm: three measures, none of which tells it alone.
#pragma once

#include "signal/fft.h"
#include "voice/partials.h"

#include <optional>
#include <span>
#include <vector>

namespace luft::voice {

/// Cepstral peak prominence: height of the cepstrum's peak at the sung period above a straight line fitted to
/// the cepstrum from 1 ms on (Hillenbrand, Cleveland & Erickson 1994), in dB; the cepstrum is that of the
/// frame's spectrum in dB. Numbers from different programs can't be compared (Skowronski et al. 2015); louder
/// singing gives higher values. Falls with breathiness and with noise or instruments in the recording.
class CepstralPeak {
  public:
    CepstralPeak();
    [[nodiscard]] std::optional<Decibels> prominence(std::span<const float> power, Hertz f0);

  private:
    signal::RealFft fft_;
    std::vector<float> cepstrum_;
};

/// Harmonics-to-noise ratio 10 log10(r / (1 - r)) from the normalised autocorrelation r at the sung period
/// (Boersma 1993, eq. 4); over 1024 samples of a frame (kFrameSamples), within +-2 % of the period. -20 to 40
/// dB. Vibrato and glides lower it.
std::optional<Decibels> harmonics_to_noise(std::span<const float> frame, Hertz f0);

/// First minus second partial in dB, each freed of what the first formant adds to it (Hanson 1997; correction
/// by the magnitude response of a two-pole resonance as in Iseli & Alwan 2004). Without a formant the raw
/// difference is given. Large = breathy or head register, small or negative = firm; but see docs/methods.md:
/// it isn't an open quotient. None when there are fewer than two partials.
std::optional<Decibels> first_minus_second(const Partials& partials, std::optional<Hertz> f1);

} // namespace luft::voice
