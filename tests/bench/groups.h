// The groups of scenes that the benchmark listens to.
#pragma once

#include "bench/scene.h"

#include <functional>
#include <string>
#include <vector>

namespace luft::bench {

/// What a group's figures are put under in the design's table and in the calibration.
enum class Kind { solo, among_instruments };

struct Group {
    std::string name;
    std::string what; ///< one line for the reader
    Kind kind = Kind::solo;
    std::function<Scene(std::uint64_t seed)> make;
};

/// Groups sung by the project's own singer. The same seed is the same song in every group but `two registers`
/// and `instrumental`, so that groups differ by their condition alone.
std::vector<Group> own_groups();

/// Voices that aren't ours: festival's and a soundfont's. They know less of themselves (see sources_*.cpp),
/// and what they don't know isn't scored.
std::vector<Group> independent_groups();

/// Recordings with labels by hand: each folder below `folder` that holds audio.* and f0.csv or events.csv is
/// a group of one. f0.csv has time_s,f0_hz (0 = nobody sings); events.csv has start_s,end_s,kind,label with
/// the kinds breath, no_breath (says that breaths are labelled though there is none), phrase, note_midi
/// (label: a MIDI number). Breaths whose label has "uncertain" or "faint" don't count. Throws
/// Error(not_found, unreadable).
std::vector<Group> recorded_groups(const std::string& folder);

/// Our voice alone in one channel, or over a band in two, for measuring time and memory.
Scene long_scene(bool with_band, Seconds length);

} // namespace luft::bench
