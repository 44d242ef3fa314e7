// Invented songs by seed, for the benchmark. They vary on every axis at once, and are made by other rules
// than the test suite's (scenes/songs.h), so that neither helps the other.
#pragma once

#include "singer/singer.h"

#include <array>

namespace luft::bench {

/// Tuning: seeds 1000 to 1999. Held out, for the published table only: 2000 and up. The test suite's own
/// seeds lie under 1000.
inline constexpr std::uint64_t kTuningSeeds = 1000, kHeldOutSeeds = 2000;

struct Key {
    double lowest = 49;                             ///< MIDI number of its lowest tonic
    std::array<int, 7> scale{0, 2, 3, 5, 7, 8, 10}; ///< semitones over it
    /// MIDI number of a degree counted from the lowest tonic; 7 is the octave.
    [[nodiscard]] double pitch(int degree) const;
};

struct InventedSong {
    singer::Song song;
    singer::Singer singer;
    Key key;
};

enum class Form {
    plain,         ///< phrase after phrase; some singers use both registers
    two_registers, ///< all do
    instrumental,  ///< a long introduction and an interlude without singing
};

/// About `length` of it.
InventedSong invent(std::uint64_t seed, Form form, Seconds length = Seconds(22));

} // namespace luft::bench
