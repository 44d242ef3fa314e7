// The picture that stands at each stop, to put into a page or a thumbnail.
#pragma once

#include "base/bytes.h"
#include "base/progress.h"
#include "media/still.h"
#include "script/cue_sheet.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <vector>

namespace luft::exports {

/// Opens the recording.
using OpenRecording = std::function<std::unique_ptr<ByteSource>()>;

/// "stop-01.png", "stop-02.png" … (".jpg" for JPEG) in `folder`, which is made when it isn't there: for each
/// stop the picture that stands while the coach talks, in the video's own size. Files so named that an
/// earlier run with more stops has left are removed. Returns the files in order; none, and makes no folder,
/// for a recording without a picture and a script without a stop. Throws as `open`, as media::open_pictures
/// and media::write_still; Stopped.
///
/// The frame is the programme's that stands (Cut::source_in), and its picture is what is on the screen in the
/// middle of it: a container that counts milliseconds, or a phone's varying rate, stamps a picture up to half
/// a frame beside the grid.
std::vector<std::filesystem::path> stills(const script::Source& source, const script::CueSheet& sheet,
                                          const OpenRecording& open, const std::filesystem::path& folder,
                                          media::StillKind kind, const Progress& progress = {});

} // namespace luft::exports
