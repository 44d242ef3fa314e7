// Which recorded talk is laid on.
#pragma once

#include "script/cue_sheet.h"

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace luft::guide {

/// A recording of the coach counts when it is as long as the talk that was rehearsed; see script/voices.h.
inline constexpr Seconds kVoiceRounding{0.05};

struct VoiceFile {
    std::filesystem::path file;
    Seconds length; ///< of the talk as it was rehearsed
};

struct VoiceFiles {
    std::map<project::ScriptItemId, VoiceFile> used;
    std::vector<std::string> not_used; ///< a sentence each, also for an aside whose end is cut off
};

/// Looks for a file of each of the script's items. A folder that isn't there holds none; files of other
/// performances' scripts are not looked at.
VoiceFiles find_voices(const std::filesystem::path& folder, const script::Source& source,
                       const script::CueSheet& sheet);

/// "'talk-3.wav' " and what is said of it, with a full stop.
std::string sentence(const std::filesystem::path& file, const std::string& said);
/// That it isn't used, and why.
std::string not_used(const std::filesystem::path& file, const std::string& why);

} // namespace luft::guide
