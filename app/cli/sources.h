// What the library's steps are made from, gathered out of a project.
#pragma once

#include "marks/listen.h"
#include "project/project.h"

#include <filesystem>

namespace luft::cli {

/// Opens a project to read. Throws as Project::open.
project::Project open_to_read(const std::string& file);
/// Opens a project to edit. Throws as Project::open.
project::Project open_to_edit(const std::string& file);

/// True for a project file, by its ending or its first bytes; false for everything else, missing files too.
bool looks_like_project(const std::filesystem::path& file);

/// The stored detection with the coach's corrections in it. Throws Error(bad_request) before detection.
marks::Analysis stored_analysis(const project::Project& project, const project::Performance& performance);

/// The project file and the linked recordings: what no result may be written over.
std::vector<std::filesystem::path> files_of(const project::Project& project);

} // namespace luft::cli
