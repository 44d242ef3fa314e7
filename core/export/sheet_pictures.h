// The marked-up sheet as pictures, one a sung row, to lay over a video.
#pragma once

#include "base/progress.h"
#include "profile/profile.h"

#include <filesystem>
#include <vector>

namespace luft::exports {

/// Each sung row of the sheet as "row-01.png" and "row-01.svg", "row-02.png" … in `folder`, which is made
/// when it isn't there. Files so named that an earlier, longer run has left are removed; what else lies in it
/// is left alone. All have one width and one time scale, on light paper, without the margin; a phrase of up
/// to half a minute is never cut in two. Returns the files in order. Throws Error(cannot_write), Stopped;
/// each file is whole or not there.
std::vector<std::filesystem::path> sheet_pictures(const profile::Source& source,
                                                  const std::filesystem::path& folder,
                                                  const Progress& progress = {});

} // namespace luft::exports
