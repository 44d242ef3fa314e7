#pragma once

#include "marks/listen.h"
#include "project/database.h"
#include "project/model.h"

namespace luft::project {

/// Replaces summary and curves of a performance, inside the caller's transaction. Throws Error(internal) when
/// the curves differ in length.
void write_listening(Database& database, PerformanceId id, const marks::Analysis& analysis);

} // namespace luft::project
