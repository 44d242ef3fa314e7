// What in a gap between sung stretches could be a breath, and what is measured on it.
#pragma once

#include "marks/segments.h"

#include <array>
#include <vector>

namespace luft::marks {

/// Bands of a noise's spectrum as breaths are compared by: those of the texture from 400 Hz up.
inline constexpr std::size_t kShapeBands = voice::kBands - 2;
using NoiseShape = std::array<float, kShapeBands>; ///< dB, freed of the quiet under it

/// A gap in the singing, as frames; the lead-in before the first and what follows the last stretch too.
struct Gap {
    std::size_t begin, end;
    bool before_singing, after_singing;
    [[nodiscard]] std::size_t length() const { return end - begin; }
};

/// A stretch of a gap that is louder than the rest of it.
struct NoiseEvent {
    std::size_t begin = 0, end = 0; ///< frames of the recording
    std::size_t gap = 0;            ///< which gap it stands in
    NoiseShape shape{};
    double below = 0; ///< its highest level from 400 Hz to 3 kHz (the core) under that of the singing, dB
    double over_quiet = 0; ///< its highest level over the quiet of the place, dB
    double hiss = 0;       ///< level over 4.5 kHz minus core, dB: [s] and [f] have more
    double hush = 0;       ///< 2 to 4.5 kHz minus 400 Hz to 2 kHz, dB: [sh] and [ch] have more
    double low = 0;        ///< 150 to 800 Hz minus core, dB: hum and murmurs have more
    double rise = 0; ///< top over the lowest level between the singing before and it, dB; tails have none
    double fall = 0; ///< top over the lowest level between it and the singing after; air in an onset has none
    double tonality = 0;          ///< see Texture::tonality
    Seconds length, since, until; ///< its own, from the singing before it, to the singing after it
};

std::vector<Gap> gaps_between(const std::vector<Run>& runs, std::size_t frames);

/// All events of the gaps, in order of time. Level is that of 400 Hz to 3 kHz, smoothed over 50 ms; an event
/// reaches to where it has fallen by 60 % of its height over the quiet, 5 dB at least and 14 at most (after
/// Ruinskiy & Lavner 2007, who find a breath's edges by its level).
std::vector<NoiseEvent> noise_events(const voice::Hearing& hearing, const std::vector<Run>& runs,
                                     const std::vector<Gap>& gaps);

} // namespace luft::marks
