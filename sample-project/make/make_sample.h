// Making the files of the sample project.
#pragma once

#include "make/performances.h"

#include <filesystem>

namespace luft::sample {

/// Where a performance's files lie under the sample project's folder.
std::filesystem::path movie_file(const Performance& performance);
std::filesystem::path truth_file(const Performance& performance);

/// Writes movie and truth of one performance under `folder`. Throws Error(cannot_write, unsupported).
void make_performance(const Performance& performance, const std::filesystem::path& folder);

} // namespace luft::sample
