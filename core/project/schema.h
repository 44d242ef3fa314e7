// The tables of a project file, in one place. docs/project-file.md explains them column by column.
#pragma once

#include "project/database.h"

#include <string>
#include <string_view>
#include <vector>

namespace luft::project {

inline constexpr std::int64_t kApplicationId = 0x4C554654; ///< "LUFT", in the file's header
inline constexpr int kVersionWritten = 3;                  ///< user_version in the file's header
inline constexpr int kOldestVersionRead = 1;

/// Tables that the coach edits: every change to a row of theirs goes into the journal. Each has an integer
/// key `id`. Whatever table isn't named by derived_tables() or journal_tables() is one of them.
std::vector<std::string> edited_tables(Database& database);
/// Tables that can be made again from the recording, or are the recording: never in the journal.
const std::vector<std::string>& derived_tables();
const std::vector<std::string>& journal_tables();

/// Names of a table's columns in order.
std::vector<std::string> columns_of(Database& database, std::string_view table);

/// Makes the tables and sets application id and version. Inside the caller's transaction.
void create_schema(Database& database);

/// Throws Error(unreadable) when a table or column is missing, or when the file brings triggers or views of
/// its own.
void verify_schema(Database& database);

} // namespace luft::project
