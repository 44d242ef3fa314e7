// From older versions of the schema to the one written today.
#pragma once

#include "project/database.h"
#include "project/project.h"

#include <filesystem>
#include <functional>
#include <vector>

namespace luft::project {

/// One step from version `from` to `from` + 1. A step that changes an edited table's columns also brings the
/// journal in line, or empties it.
struct Migration {
    int from = 0;
    std::function<void(Database&)> apply;
};

/// All steps, from kOldestVersionRead on.
const std::vector<Migration>& migrations();

/// Where the copy of an older file goes before it is migrated: "song.luft" -> "song.before-v2.luft"; with a
/// number when that exists already.
std::filesystem::path backup_path(const std::filesystem::path& file, int to);

/// Brings the file to version `to` in one transaction, with a whole copy of it as it was beside it. Throws
/// Error(newer) for a newer file, Error(unreadable) for one that is too old, Error(cannot_write) for an older
/// one under Access::read or when the copy can't be written, Error(busy); then the file is as it was.
void migrate(Database& database, const std::filesystem::path& file, Access access,
             const std::vector<Migration>& steps, int to);

} // namespace luft::project
