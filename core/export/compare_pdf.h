// Two compared performances on paper.
#pragma once

#include "base/progress.h"
#include "compare/comparison.h"
#include "profile/profile.h"

#include <filesystem>

namespace luft::exports {

/// An A4 PDF with what compare_html says and shows; page one is to talk from. Throws Error(cannot_write),
/// Stopped; then nothing stands under the name.
void compare_pdf(const compare::Comparison& comparison, const profile::Source& a, const profile::Source& b,
                 const std::filesystem::path& file, const Progress& progress = {});

} // namespace luft::exports
