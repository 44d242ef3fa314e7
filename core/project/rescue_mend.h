// Makes rows that were saved one by one a project again: whatever refers to what is lost is mended or goes.
#pragma once

#include "base/progress.h"
#include "project/database.h"

#include <set>
#include <string>
#include <vector>

namespace luft::project {

/// Inside the caller's transaction, with foreign keys off. `lossy` names the tables that may have lost rows.
/// A sentence for each thing that was done; the order is that of the work.
std::vector<std::string> mend_rescued(Database& database, const std::set<std::string>& lossy,
                                      const Progress& progress);

} // namespace luft::project
