// From samples to curves: the two passes in order.
#pragma once

#include "base/progress.h"
#include "base/samples.h"
#include "voice/curves.h"
#include "voice/source_fit.h"
#include "voice/texture.h"

#include <optional>

namespace luft::voice {

struct Hearing {
    Seconds duration;
    Setting setting = Setting::alone;
    Loudness loudness;
    Curves curves; ///< head_register is still empty: it is fitted to notes, see marks/registers.h
    Texture texture;
    SourceCurves source;
};

/// Hears the whole source; `setting` none = find out. Throws Error(unreadable) when there isn't a sample in
/// it.
Hearing hear(SampleSource& source, std::optional<Setting> setting, const Progress& progress = {});

} // namespace luft::voice
