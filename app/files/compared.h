// Two performances of a project, aligned.
#pragma once

#include "base/progress.h"
#include "compare/align.h"
#include "compare/comparison.h"
#include "project/project.h"

#include <vector>

namespace luft::files {

/// The pins that the project holds between the two.
std::vector<compare::Pair> pins_of(const project::Project& project, const project::Performance& a,
                                   const project::Performance& b);

/// Aligns two performances as the project holds them, with the coach's corrections. With `harmony` the
/// recordings are heard for what sounds beside the voice, which carries the alignment where nobody sings.
/// Throws Error(bad_request) when they are the same one or one hasn't been listened to, as compare::align and
/// Project::media, Stopped. `before`, if given, has heard what sounds beside the voice already where it holds
/// the same recording at the same tuning.
compare::Comparison compare_performances(const project::Project& project, const project::Performance& a,
                                         const project::Performance& b, bool harmony,
                                         const compare::AlignOptions& options, const Progress& progress,
                                         const compare::Comparison* before = nullptr);

} // namespace luft::files
