// The guide movie of a performance, as the verb and the format write it.
#pragma once

#include "base/progress.h"
#include "files/formats.h"
#include "guide/guide.h"

#include <filesystem>

namespace luft::files {

/// `voices`: whether the coach's recorded talk is laid on; what of it wasn't is noted in the material. Throws
/// as guide::write_guide and Project::media.
guide::Report write_guide_file(Material& material, const std::filesystem::path& file,
                               const guide::Options& options, bool voices, const Progress& progress);

} // namespace luft::files
