// The pairs that the benchmark of aligning is made of.
#pragma once

#include "bench/pairs/meet.h"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace luft::bench {

/// One row of a table and what was met in it, by column.
struct PairRow {
    std::string name;
    std::map<std::string, Meeting> by;     ///< by the voice or by what the ear was given
    std::optional<Seconds> map_error = {}; ///< of warps: how far from the curve the library itself is
};

struct PairWork {
    std::uint64_t first = 3001, last = 3003; ///< seeds of the tunes; none was used for tuning
    int jobs = 1;
    std::string recordings; ///< folder of recordings of your own; may be empty
};

/// One recording against itself warped by Rubber Band, by voice.
std::vector<PairRow> warped_rows(const PairWork& work);
/// Two voices that sing one tune.
std::vector<PairRow> two_voice_rows(const PairWork& work);
/// The test voice with and without a band, and with and without the harmony of the whole sound.
std::vector<PairRow> band_rows(const PairWork& work);

/// The curves that recordings are warped by.
struct Warp {
    std::string name;
    std::function<TimeMap(Seconds length, std::uint64_t seed)> map;
    int semitones = 0;
};
std::vector<Warp> warps();

} // namespace luft::bench
