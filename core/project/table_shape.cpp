#include "project/table_shape.h"

#include "project/schema.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace luft::project {
namespace {

/// A REAL that is whole lies in the file as an integer (section 2.1 of the format).
bool is_of_type(const StoredValue& value, const std::string& type) {
    if (std::holds_alternative<std::int64_t>(value)) return type == "INTEGER" || type == "REAL";
    if (std::holds_alternative<double>(value)) return type == "REAL";
    if (std::holds_alternative<std::string>(value)) return type == "TEXT";
    return type == "BLOB";
}

std::vector<TableShape::Column> columns(Database& database, const std::string& table) {
    std::vector<TableShape::Column> all;
    Statement rows =
        database.query("SELECT name, type, \"notnull\", pk FROM pragma_table_info(?) ORDER BY cid", table);
    while (rows.step()) {
        const bool is_rowid = rows.truth(3) && rows.text(1) == "INTEGER";
        all.push_back({rows.text(0), rows.text(1), !rows.truth(2), is_rowid});
    }
    return all;
}

} // namespace

bool TableShape::fits(const StoredRow& row) const {
    return std::ranges::equal(row.values, columns, [](const StoredValue& value, const Column& column) {
        if (std::holds_alternative<std::nullptr_t>(value)) return column.may_be_null || column.is_rowid;
        return !column.is_rowid && is_of_type(value, column.type);
    });
}

std::vector<TableShape> table_shapes(Database& database) {
    // What others refer to; the rest in any order.
    constexpr std::array<std::string_view, 9> kFirst = {"piece",       "script_settings", "facet",
                                                        "shade",       "drill",           "carried",
                                                        "performance", "moment",          "script_item"};
    std::vector<std::string> names = edited_tables(database);
    const auto& derived = derived_tables();
    names.insert(names.end(), derived.begin(), derived.end());
    const auto rank = [&](const std::string& name) {
        return std::ranges::find(kFirst, name) - kFirst.begin();
    };
    std::ranges::stable_sort(names, {}, rank);
    std::vector<TableShape> shapes;
    for (const std::string& name : names)
        shapes.push_back({name, columns(database, name)});
    return shapes;
}

} // namespace luft::project
