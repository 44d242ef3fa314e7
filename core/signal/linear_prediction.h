// Linear prediction: the all-pole filter behind a spectrum, and its resonances.
#pragma once

#include "base/units.h"

#include <span>
#include <vector>

namespace luft::signal {

/// The predictor polynomial 1 + a1 z^-1 + … + ap z^-p from an autocorrelation (p + 1 lags at least), by the
/// Levinson-Durbin recursion (Makhoul 1975, "Linear prediction: a tutorial review", eqs. 38a-e). Returns a0 =
/// 1 first. An all-zero autocorrelation gives 1, 0, 0 …
std::vector<double> levinson(std::span<const double> autocorrelation, int order);

struct Resonance {
    Hertz frequency;
    Hertz bandwidth;
};

/// The resonances of an all-pole filter: its complex pole pairs z = r e^(i w) as frequency w fs / (2 pi) and
/// bandwidth -ln(r) fs / pi (Markel & Gray 1976), in order of frequency. The poles are found by
/// simultaneous iteration (Durand 1960, Kerner 1966).
std::vector<Resonance> resonances(std::span<const double> polynomial, SampleRate rate);

} // namespace luft::signal
