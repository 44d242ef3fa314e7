// The project file as a file: what its first bytes say, whether it is all there, and how it is opened after a
// crash. Format of the header: sqlite.org/fileformat2.html, section 1.3.
#pragma once

#include "project/database.h"
#include "project/project.h"

#include <filesystem>

namespace luft::project {

/// Where the file itself lies: absolute, links followed, since SQLite looks for an edit that was cut off, and
/// we for backups, beside the file and not beside a link to it.
std::filesystem::path place_of(const std::filesystem::path& given);

/// Reads the header without opening it as a database, so that a file of another kind or of a newer version
/// isn't touched. Throws Error(not_found, unreadable, newer).
void expect_project_header(const std::filesystem::path& file);

/// An edit needs a journal beside the file. Throws Error(cannot_write) when none can be made there.
void expect_writable_folder(const std::filesystem::path& file);

/// Opens the database. An edit that was cut off by a crash is rolled back first; where that can't be done
/// because the file is read-only, throws Error(cannot_write).
Database open_recovered(const std::filesystem::path& file, Access access);

/// Throws Error(unreadable) when the file is shorter than its header says.
void expect_whole(Database& database, const std::filesystem::path& file);

} // namespace luft::project
