// What a profile and a sheet are made from, gathered out of a project.
#pragma once

#include "profile/profile.h"
#include "project/project.h"

namespace luft::profile {

/// One performance as the project holds it now. Throws as Project's readers.
Source gather(const project::Project& project, const project::Performance& performance);

/// Where the performance's script halts, in its order.
std::vector<Seconds> stops_of(const project::Project& project, project::PerformanceId performance);

} // namespace luft::profile
