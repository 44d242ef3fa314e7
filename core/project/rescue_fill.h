// Rows saved from a damaged file, on their way into the tables of a new one.
#pragma once

#include "project/database.h"
#include "project/page_file.h"
#include "project/table_shape.h"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace luft::project {

/// Puts rows into one table, and counts those that its rules refuse. Of rows with the same number the first
/// one holds: what comes later is an older state.
class Filler {
  public:
    Filler(Database& to, const TableShape& shape);

    [[nodiscard]] const std::string& table() const { return shape_.table; }
    [[nodiscard]] std::int64_t refused() const { return refused_; }

    /// How many of the rows are this table's; refused ones are as well.
    std::size_t take(const std::vector<StoredRow>& rows);
    /// How many would come in; leaves the table as it is.
    std::size_t would_take(Database& to, const std::vector<StoredRow>& rows);

  private:
    bool take_row(const StoredRow& row);
    bool insert(const StoredRow& row);
    void bind(int index, const StoredValue& value);

    const TableShape& shape_;
    Statement insert_;
    std::set<std::int64_t> ids_;
    std::int64_t refused_ = 0;
};

/// The table that would take most of the rows; null when none does, or two as many.
Filler* best_for(const std::vector<StoredRow>& rows, std::map<std::string, Filler>& fillers, Database& to);

} // namespace luft::project
