// Whole contents of a project as text, so that two states can be compared bit for bit.
#pragma once

#include "desk.h"

#include <sqlite3.h>

namespace desk {

/// Every row of every table of the coach's and of the derived ones, read with SQLite itself: one line a row,
/// numbers as their bits. Derived tables only when asked for: they aren't taken back.
inline std::string contents(const fs::path& file, bool with_derived = true) {
    sqlite3* db = nullptr;
    REQUIRE(sqlite3_open_v2(file.c_str(), &db, SQLITE_OPEN_READONLY, nullptr) == SQLITE_OK);
    const auto all = [&](const std::string& sql, auto each) {
        sqlite3_stmt* rows = nullptr;
        REQUIRE(sqlite3_prepare_v2(db, sql.c_str(), -1, &rows, nullptr) == SQLITE_OK);
        while (sqlite3_step(rows) == SQLITE_ROW)
            each(rows);
        sqlite3_finalize(rows);
    };
    std::vector<std::string> tables;
    all("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE "
        "'journal%' ORDER BY name",
        [&](sqlite3_stmt* r) {
            tables.emplace_back(reinterpret_cast<const char*>(sqlite3_column_text(r, 0)));
        });
    if (!with_derived)
        std::erase_if(tables, [](const std::string& t) {
            return t == "curve" || t == "listening" || t == "carried" || t == "carried_chunk";
        });
    std::string text;
    for (const std::string& table : tables)
        all("SELECT * FROM " + table + " ORDER BY 1", [&](sqlite3_stmt* r) {
            text += table;
            for (int c = 0; c < sqlite3_column_count(r); ++c) {
                const int type = sqlite3_column_type(r, c);
                text += "|" + std::to_string(type) + ":";
                if (type == SQLITE_FLOAT) {
                    const double v = sqlite3_column_double(r, c);
                    text.append(reinterpret_cast<const char*>(&v), sizeof v);
                } else if (type != SQLITE_NULL) {
                    const auto* bytes = static_cast<const char*>(sqlite3_column_blob(r, c));
                    text.append(bytes ? bytes : "", static_cast<std::size_t>(sqlite3_column_bytes(r, c)));
                }
            }
            text += "\n";
        });
    sqlite3_close(db);
    return text;
}

/// As another program would do it.
inline void execute(const fs::path& file, const std::string& sql) {
    sqlite3* db = nullptr;
    REQUIRE(sqlite3_open(file.c_str(), &db) == SQLITE_OK);
    char* message = nullptr;
    INFO(sql);
    const int result = sqlite3_exec(db, sql.c_str(), nullptr, nullptr, &message);
    INFO((message ? message : ""));
    CHECK(result == SQLITE_OK);
    sqlite3_free(message);
    sqlite3_close(db);
}

} // namespace desk
