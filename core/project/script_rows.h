// Script items as rows of the table `script_item`.
#pragma once

#include "project/database.h"
#include "project/model.h"

#include <vector>

namespace luft::project {

std::vector<ScriptItem> read_script(Database& database, PerformanceId id);
/// Throws Error(not_found).
ScriptItem read_script_item(Database& database, ScriptItemId id);
ScriptItemId insert_script_item(Database& database, const ScriptItem& item);
/// Writes everything but performance.
void update_script_item(Database& database, const ScriptItem& item);
void delete_script_item(Database& database, ScriptItemId id);

/// Throws Error(bad_request) for times, speed or moment that make no sense.
void demand_script_item(Database& database, const ScriptItem& item);

/// Where an item belongs by media time: openings first, closings last, stops and asides by `at`; after those
/// of the same time. Index into `script`.
std::size_t place_by_time(const std::vector<ScriptItem>& script, const ScriptItem& item);

} // namespace luft::project
