// The page that a run writes.
#pragma once

#include "bench/run.h"
#include "bench/table.h"

#include <filesystem>

namespace luft::bench {

/// All tables as they are printed, in their order.
void print(const std::vector<Table>& tables);

/// Writes `folder`/ear.md: what was listened to, on what machine, and the tables. Throws Error(cannot_write).
void write_page(const std::filesystem::path& folder, const Work& work, const std::vector<Table>& tables);

} // namespace luft::bench
