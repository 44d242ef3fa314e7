// The practice handout on paper.
#pragma once

#include "base/progress.h"
#include "profile/profile.h"

#include <filesystem>

namespace luft::exports {

/// An A4 PDF with what `handout` says and shows. `source` is what the profile was made from. Throws
/// Error(cannot_write), Stopped; then nothing stands under the name.
void handout_pdf(const profile::Profile& profile, const profile::Source& source,
                 const std::filesystem::path& file, const Progress& progress = {});

} // namespace luft::exports
