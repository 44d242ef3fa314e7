// What the spectrum says for and against a pitch being a tone of its own.
#pragma once

#include "base/units.h"

#include <span>

namespace luft::voice {

/// Measured at the partials of one possible pitch, in dB. Own measures, no source; what they decide is
/// weighed in likeness.h.
struct Claim {
    float level = -120; ///< power of the first twelve partials together
    float high = -50;   ///< its part at 1.5 to 4 kHz, against all of it
    float between =
        -30; ///< strongest place half-way between the first partials, against the strongest partial
    float sub_octave = 0; ///< how far peaks stand out half-way between partials: high when the tone is really
                          ///< an octave lower
    float odd =
        0; ///< how far the odd partials stand out of what is around: low when it is really an octave higher
};

/// `decibels`: level by bin of Spectrum, at least kClaimBins of them.
Claim measure_claim(std::span<const float> decibels, Hertz pitch);

inline constexpr std::size_t kClaimBins = 513; ///< up to 6 kHz

} // namespace luft::voice
