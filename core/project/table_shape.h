// How the rows of each table look, to know them again without their table.
#pragma once

#include "project/database.h"
#include "project/page_file.h"

#include <string>
#include <vector>

namespace luft::project {

struct TableShape {
    struct Column {
        std::string name;
        std::string type; ///< as declared: INTEGER, REAL, TEXT, BLOB
        bool may_be_null = false;
        bool is_rowid = false; ///< INTEGER PRIMARY KEY: null in the file, the row id stands for it
    };
    std::string table;
    std::vector<Column> columns;

    [[nodiscard]] bool fits(const StoredRow& row) const;
};

/// Those of all tables with row ids, in the order in which rows can be put in: what is referred to first.
std::vector<TableShape> table_shapes(Database& database);

} // namespace luft::project
