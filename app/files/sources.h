// What a project's results are made from.
#pragma once

#include "marks/listen.h"
#include "project/project.h"

#include <filesystem>
#include <vector>

namespace luft::files {

/// The stored detection with the coach's corrections in it. Throws Error(bad_request) before detection.
marks::Analysis stored_analysis(const project::Project& project, const project::Performance& performance);

/// The project file and the linked recordings: what no result may be written over.
std::vector<std::filesystem::path> files_of(const project::Project& project);

} // namespace luft::files
