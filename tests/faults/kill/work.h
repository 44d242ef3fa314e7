// What the program is at when it is disturbed: a folder as it is before, and a command.
#pragma once

#include "project/compare.h"
#include "tools/child.h"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace faults {

using namespace desk;

struct Work {
    std::string name;                   ///< "adding a recording"
    std::vector<std::string> arguments; ///< '@' = the folder
    std::function<void(const fs::path&)> furnish;
    std::string project = "song.luft"; ///< whose edits are looked at; empty = it isn't there before
    std::string makes;                 ///< the project that it makes, if any
    bool is_long = false;              ///< takes seconds: a short run does it seldom
};

/// A copy of a furnished folder, to work in.
class Room {
  public:
    explicit Room(const fs::path& furnished) {
        fs::copy(furnished, folder.path(),
                 fs::copy_options::recursive | fs::copy_options::overwrite_existing);
    }
    [[nodiscard]] fs::path operator/(const std::string& name) const { return folder / name; }
    Folder folder;
};

std::vector<std::string> in(const fs::path& folder, std::vector<std::string> arguments);

/// Runs `luftpause`, which must succeed.
void done(const fs::path& folder, const std::vector<std::string>& arguments);

Work making_a_project();
Work adding(bool carry);
Work adding_and_listening();
Work listening();
Work editing_words();
Work editing_a_moment();
Work drafting();
Work undoing();
Work redoing();
Work migrating();
Work rescuing();
/// Opening for reading what was cut off while it was written.
Work rolling_back();
Work exporting();
std::vector<Work> all_works();

} // namespace faults
