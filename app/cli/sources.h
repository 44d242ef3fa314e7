// What the library's steps are made from, gathered out of a project.
#pragma once

#include "marks/listen.h"
#include "media/media.h"
#include "profile/profile.h"
#include "project/project.h"
#include "script/cue_sheet.h"

#include <filesystem>

namespace luft::cli {

/// Opens a project to read. Throws as Project::open.
project::Project open_to_read(const std::string& file);
/// Opens a project to edit. Throws as Project::open.
project::Project open_to_edit(const std::string& file);

/// True for a project file, by its ending or its first bytes; false for everything else, missing files too.
bool looks_like_project(const std::filesystem::path& file);

/// The performance's own facts, out of what the media file says.
project::MediaFacts facts_of(const media::Facts& facts);

profile::Source profile_source(const project::Project& project, const project::Performance& performance);
script::Source script_source(const project::Project& project, const project::Performance& performance);

/// The stored detection with the coach's corrections in it. Throws Error(bad_request) before detection.
marks::Analysis stored_analysis(const project::Project& project, const project::Performance& performance);

/// The project file and the linked recordings: what no result may be written over.
std::vector<std::filesystem::path> files_of(const project::Project& project);

} // namespace luft::cli
