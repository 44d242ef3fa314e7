// What must hold in every row of a project file.
#pragma once

#include <span>
#include <string_view>

namespace luft::project {

/// The schema says it too, but SQLite's integrity check (3.40) passes over such rules on a connection that
/// only reads. NULL, where it is allowed, passes.
struct RowRule {
    const char* table;
    const char* holds; ///< in SQL
};

std::span<const RowRule> row_rules();

/// False for infinite values, and for shares outside 0 to 1.
bool can_be_curve(std::string_view name, std::span<const float> values);

} // namespace luft::project
