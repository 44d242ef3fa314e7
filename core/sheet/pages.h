// The sheet on paper: pages of a PDF.
#pragma once

#include "base/progress.h"
#include "sheet/layout.h"

#include <filesystem>

namespace luft::sheet {

/// A4 upright, in points.
inline constexpr double kPageWidth = 595.3, kPageHeight = 841.9;

/// Writes the whole sheet: title, rows with their moments, the signs' meaning on the last page, page numbers.
/// Returns the number of pages. Throws Error(cannot_write), Stopped; then nothing stands under the name.
int write_pdf(const profile::Source& source, const std::filesystem::path& file,
              const Progress& progress = {});

} // namespace luft::sheet
