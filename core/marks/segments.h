// Runs of sung frames and the notes they fall into, as frame numbers; the first step from curves to marks.
#pragma once

#include "voice/hear.h"

#include <vector>

namespace luft::marks {

/// Frames `begin` to `end` (not included).
struct Run {
    std::size_t begin = 0, end = 0;
    [[nodiscard]] std::size_t length() const { return end - begin; }
};

/// Stretches sung on a pitch. Holes of up to 30 ms are bridged when the pitch goes on; stretches under 50 ms
/// are no singing. Reverb tails are cut: where the level has fallen 22 dB or more under the run's loud part
/// and only falls.
std::vector<Run> sung_runs(const voice::Hearing& hearing);

/// Pitch as MIDI numbers by frame, NaN where not sung, with holes inside runs closed by straight lines.
std::vector<float> pitch_line(const voice::Hearing& hearing, const std::vector<Run>& runs);

/// Cuts runs into notes: the cheapest piecewise constant line through the pitch freed of vibrato (dynamic
/// programming as in Bellman 1961: a cost per semitone and frame off the line, a fixed cost per change), and
/// again at consonants (consonants.h), which part repeated notes too. A wide glide between two notes is one
/// boundary, in its middle. Stretches less than 0.6 semitones apart are one drifting note, and a short rise
/// out of silence into a note is that note's scoop (own rules).
std::vector<Run> cut_notes(const voice::Hearing& hearing, const std::vector<Run>& runs,
                           const std::vector<float>& pitch);

} // namespace luft::marks
