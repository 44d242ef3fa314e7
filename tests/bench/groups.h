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

} // namespace luft::bench
