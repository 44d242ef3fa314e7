// Ring and colour: where in the spectrum a voice has its strength.
#pragma once

#include "voice/partials.h"

#include <optional>
#include <span>

namespace luft::voice {

/// Singing power ratio (Omori et al. 1996): strongest partial in 2-4 kHz minus strongest under 2 kHz, in dB.
/// Mostly negative; nearer 0 = more ring. It didn't follow experts' ranking of trained voices (Kenny &
/// Mitchell 2006). None when no partial falls into a band.
std::optional<Decibels> singing_power_ratio(const Partials& partials);

/// Alpha ratio: energy in 1-5 kHz over energy in 50 Hz-1 kHz, in dB, high over low (Frokjaer-Jensen & Prytz
/// 1975), of the partials. +6.24 dB for a flat spectrum; brighter or louder = higher.
std::optional<Decibels> alpha_ratio(const Partials& partials);

/// Spectral centroid of the partials with power weights, sum(f p) / sum(p).
std::optional<Hertz> centroid(const Partials& partials);

} // namespace luft::voice
