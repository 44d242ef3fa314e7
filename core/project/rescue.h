// All that a damaged project file still holds, in a new one.
#pragma once

#include "base/progress.h"

#include <filesystem>
#include <string>
#include <vector>

namespace luft::project {

struct Rescue {
    std::string saved; ///< what the new project holds: "2 performances, 310 marks, 14 moments"
    std::vector<std::string>
        missing; ///< what was lost or had to be left out, a sentence each; empty = nothing
};

/// Reads `damaged` page by page (page_file.h), never writes to it nor to anything beside it, and makes the
/// project `fresh` of it:
///
/// - rows that can't be, and rows that refer to what is lost, are left out; a moment or a part of the script
///   that loses only what it refers to stays without it;
/// - marks and moments whose performance is lost get one that stands in for it;
/// - facets, shades and drills that are lost come back as the program brings them;
/// - a carried recording that isn't whole is left out, and the performance asks for the file again;
/// - curves that aren't whole go, and the performance has to be listened to again;
/// - the history of edits comes along only when nothing at all was lost.
///
/// A change inside a row that still makes sense (another letter in a remark) can't be noticed: the file has
/// no checksums. An edit that was cut off by a crash is rolled back first, in a copy for the time beside
/// `fresh`.
///
/// Throws Error(not_found, unreadable) when `damaged` isn't there or nothing in it looks like a project's,
/// Error(newer), Error(cannot_write) when `fresh` exists or can't be written, Stopped; then there is no
/// `fresh`.
Rescue rescue(const std::filesystem::path& damaged, const std::filesystem::path& fresh,
              const Progress& progress = {});

} // namespace luft::project
