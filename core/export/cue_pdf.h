// The cue sheet on paper.
#pragma once

#include "base/progress.h"
#include "script/cue_sheet.h"

#include <filesystem>

namespace luft::exports {

/// An A4 PDF with what cue_html says: figures, the programme at a glance, warnings, every segment and aside
/// with its programme and its media time and all words, credits and permission, cautions. Throws
/// Error(cannot_write), Stopped; then nothing stands under the name.
void cue_pdf(const script::Source& source, const script::CueSheet& sheet, const std::filesystem::path& file,
             const Progress& progress = {});

} // namespace luft::exports
