// Which rows a connection has written, kept for whoever holds a copy of them.
#pragma once

#include "project/database.h"
#include "project/project.h"

#include <set>

namespace luft::project {

/// Fed by the connection itself with every row it writes: edits, undo and redo alike, and what was rolled
/// back as well, which is only looked at once too often.
class ChangeLog {
  public:
    void written(std::string_view table, std::int64_t row);
    /// What has been written since the last call.
    Changes take(Database& database);

  private:
    Changes since_;
    std::set<std::int64_t> marks_;
    std::int64_t version_ = 0; ///< SQLite's data_version: another one when another connection has written
};

} // namespace luft::project
