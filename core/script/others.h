// The other performances of the piece, where a script quotes them.
#pragma once

#include "script/cue_sheet.h"

#include <optional>
#include <string>

namespace luft::script {

/// Null when the project has no such performance beside the script's own.
const Other* other_of(const Source& source, project::PerformanceId id);

/// The performance whose recording a segment plays or shows.
const project::Performance& performance_of(const Source& source, const Segment& segment);

/// "B (Mara Lindqvist)", on one line; the label alone where no performer is noted.
std::string performance_name(const project::Performance& performance);

/// How much of a recording is heard: of the script's own, or of another performance's.
struct Share {
    Seconds once;     ///< heard at least once
    double share = 0; ///< of the recording's length
};
Share share_of(const CueSheet& sheet, std::optional<project::PerformanceId> other);

} // namespace luft::script
