// All scenes listened to and scored, on several threads.
#pragma once

#include "bench/tables.h"

#include <cstdint>
#include <functional>
#include <vector>

namespace luft::bench {

/// A group and the seeds of its scenes, both included.
struct Seeded {
    Group group;
    std::uint64_t first = 2000, last = 2007;
};

struct Work {
    std::vector<Seeded> groups;
    int jobs = 1;
    bool truth_as_answer = false; ///< scores the truth itself instead of what the ear says
    /// Called after each scene, one at a time.
    std::function<void(const std::string& group, std::size_t done, std::size_t all)> on_scene = {};
};

struct Results {
    std::vector<GroupScores> groups; ///< in the order of the work
    std::vector<GroupScores> scenes; ///< each scene by itself, named by group and seed
};

/// Throws what making or hearing a scene throws, after the scenes that had been begun.
Results run_scenes(const Work& work);

} // namespace luft::bench
