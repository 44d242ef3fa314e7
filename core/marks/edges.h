// How notes start and end.
#pragma once

#include "marks/marks.h"
#include "marks/segments.h"
#include "voice/texture.h"

#include <optional>

namespace luft::marks {

/// What is measured around the start of a note that comes out of silence.
struct StartMeasures {
    Seconds begins; ///< where the tone is 20 dB under its steady level for the last time before it stands
    Seconds rise;   ///< from there to 1.5 dB under the steady level
    Decibels noise_before; ///< high band (over 3 kHz) before it, over the quiet of the place
    Decibels noise_share;  ///< the same against the high band of the steady tone
    Decibels gap;          ///< how quiet the 30 ms before it are, under the steady level
    Decibels dip;          ///< how far the level falls within 60 ms before the note or 30 ms into it
};
std::optional<StartMeasures> measure_start(const voice::Texture& texture, const Run& note,
                                           std::size_t silent_before);

/// Glottal, breathy or balanced. Glottal onsets rise within 10-30 ms, balanced ones in 30-90 ms, breathy ones
/// slower (common practice, no source) and after audible air (Watson, Baken & Roark: the aspirate has flow
/// before closure); a hard onset's first cycles are irregular (low harmonics-to-noise ratio against the rest
/// of the note), and a breathy one's period is unclear (low cepstral peak). `silent_before`: frames without
/// singing before the note; under 5, and with the level falling less than 12 dB in between, the note is
/// joined to the one before it, and its onset is called balanced with little confidence. Air before a tone
/// that rises fast may be a consonant's: then confidence is 0.5 at most. Weights tuned on songs of
/// the project's singer, dry and in rooms, 50 songs; confidence, of offsets too, on seeds 1000 to 1023.
Onset judge_onset(const voice::Hearing& hearing, const Run& note, std::size_t silent_before);

/// Clean, breathy or trailing: how fast the level falls, whether air is heard after the tone, whether the
/// pitch sinks.
Offset judge_offset(const voice::Hearing& hearing, const Run& note, std::size_t silent_after);

} // namespace luft::marks
