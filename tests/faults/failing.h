// A program of which one chosen change of a file fails, or where it is killed. failing/failing.cpp does it,
// from inside the program.
#pragma once

#include "tools/child.h"

#include <filesystem>
#include <string>
#include <vector>

namespace luft::test {

/// What happens at which call that changes a file. All calls count that create, write, shorten, rename,
/// remove or sync something in the test's own folder.
struct Failing {
    long at = 0;       ///< from 1; 0 = nowhere
    bool kill = false; ///< the program is killed there (SIGKILL)
    int error = 0;     ///< else the call fails with this errno
    bool on = false;   ///< and so does each one after it, as on a full disk; removing goes on
    bool half = false; ///< what is written there is written by half first
};

struct Tried {
    Outcome outcome; ///< status 128 + SIGKILL also when it didn't end within a minute
    bool hung = false;
    std::vector<std::string> calls; ///< "write /…/song.luft", up to its end
};

/// Runs `luftpause`, with what happens in `folder`.
Tried try_failing(const std::string& program, const std::vector<std::string>& arguments,
                  const std::filesystem::path& folder, const Failing& failing);

} // namespace luft::test
