// What a script and its cue sheet are made from, gathered out of a project.
#pragma once

#include "project/project.h"
#include "script/cue_sheet.h"

namespace luft::script {

/// One performance's script as the project holds it now. Throws as Project's readers.
Source gather(const project::Project& project, const project::Performance& performance);

} // namespace luft::script
