// Tunes as Standard MIDI Files, for synthesizers from outside the project.
#pragma once

#include "base/units.h"

#include <filesystem>
#include <vector>

namespace luft::bench {

struct MidiNote {
    int channel = 0; ///< 0 to 15; 9 is the drums'
    int key = 60;    ///< 0 to 127
    int velocity = 96;
    Span span;
};

struct MidiChannel {
    int channel = 0;
    int program = 0; ///< 0 to 127, General MIDI
    double pan = 0;  ///< -1 left to 1 right
    Cents bend{0};   ///< off equal temperament at 440 Hz, within +-200
};

/// Writes a file of format 0 (Standard MIDI Files 1.0, MIDI Manufacturers Association RP-001), 1920 ticks a
/// second. Throws Error(cannot_write).
void write_midi(const std::filesystem::path& file, const std::vector<MidiChannel>& channels,
                const std::vector<MidiNote>& notes);

} // namespace luft::bench
