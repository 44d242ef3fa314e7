// What the library's steps are made from, gathered out of a project.
#pragma once

#include "files/sources.h"
#include "project/project.h"

#include <filesystem>

namespace luft::cli {

/// Opens a project to read. Throws as Project::open.
project::Project open_to_read(const std::string& file);
/// Opens a project to edit. Throws as Project::open.
project::Project open_to_edit(const std::string& file);

/// True for a project file, by its ending or its first bytes; false for everything else, missing files too.
bool looks_like_project(const std::filesystem::path& file);

using files::files_of;

} // namespace luft::cli
