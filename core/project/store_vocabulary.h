#pragma once

#include "project/database.h"
#include "vocabulary/vocabulary.h"

namespace luft::project {

/// Stores a whole vocabulary in empty tables, in its order.
void write_vocabulary(Database& database, const vocabulary::Vocabulary& vocabulary);

/// Adds those of its facets, shades and drills whose keys aren't stored.
void add_missing_vocabulary(Database& database, const vocabulary::Vocabulary& vocabulary);

vocabulary::Vocabulary read_vocabulary(Database& database);

} // namespace luft::project
