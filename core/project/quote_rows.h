// Spans of another performance that a moment or a part of the script quotes, as rows of their own tables.
#pragma once

#include "project/database.h"
#include "project/model.h"

#include <optional>

namespace luft::project {

enum class Quoting { moment, script_item }; ///< whose quote it is

/// Out of three columns of a joined row: performance, start, end.
std::optional<Quote> read_quote(const Statement& row, int column);
/// Puts, changes or takes away the owner's quote. A row that says the same already isn't recorded.
void write_quote(Database& database, Quoting by, std::int64_t owner, const std::optional<Quote>& quote);

/// Throws Error(bad_request) for an empty span or one of the owner's own performance, Error(not_found) for a
/// performance that isn't there.
void demand_quote(Database& database, const std::optional<Quote>& quote, PerformanceId owners);

} // namespace luft::project
