// Notes in equal temperament on ISO 16's A4 = 440 Hz (1955, reaffirmed 1975): f = 440 x 2^((m - 69) / 12).
#pragma once

#include <array>

namespace luft::reference {

struct NoteRow {
    const char* name;
    int midi;
    double hz;
};

/// Computed from the formula to three places; names in scientific pitch notation, C4 = MIDI 60.
inline constexpr std::array<NoteRow, 15> kNotes{{
    {"E2", 40, 82.407},
    {"A2", 45, 110.000},
    {"C3", 48, 130.813},
    {"G3", 55, 195.998},
    {"A3", 57, 220.000},
    {"C4", 60, 261.626},
    {"D4", 62, 293.665},
    {"E4", 64, 329.628},
    {"F4", 65, 349.228},
    {"G4", 67, 391.995},
    {"A4", 69, 440.000},
    {"C5", 72, 523.251},
    {"E5", 76, 659.255},
    {"F#5", 78, 739.989},
    {"C6", 84, 1046.502},
}};

} // namespace luft::reference
