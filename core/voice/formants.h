// The resonances of the vocal tract behind a sung vowel.
#pragma once

#include "base/units.h"
#include "voice/partials.h"

#include <optional>
#include <vector>

namespace luft::voice {

struct Formants {
    Hertz f1, f2;
    std::optional<Hertz> f3;
};

/// Above this pitch the partials are too far apart to show where the resonances lie, and formants are
/// withheld.
inline constexpr Hertz kHighestForFormants{400};

/// The third formant's finder; F1 and F2 in the curves come from the fit of tract and pulse (source_fit.h),
/// whose error is a third of this one's. Formants by linear prediction (Makhoul 1975) of the envelope through
/// the partials (a pitch-synchronous form that doesn't take single partials for resonances): the partials'
/// levels, joined by straight lines in dB over frequency up to 5.5 kHz and tilted by +6 dB an octave, give
/// the autocorrelation of an all-pole model of order 10, whose poles with bandwidths under 500 Hz are the
/// formants. None above kHighestForFormants and where fewer than two resonances lie where F1 (180-1100 Hz)
/// and F2 (550-3000 Hz) can lie. Error grows with pitch: about a fifth of f0.
class FormantFinder {
  public:
    FormantFinder();
    [[nodiscard]] std::optional<Formants> find(const Partials& partials) const;

  private:
    std::vector<double> cosines_; ///< cos(pi m k / n) by lag m and grid point k
};

} // namespace luft::voice
