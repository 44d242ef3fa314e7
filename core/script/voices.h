// Where the coach's recorded talk lies: a folder beside the project, one WAV file a part of the script.
#pragma once

#include "project/model.h"

#include <filesystem>

namespace luft::script {

/// "NAME-voice" beside "NAME.luft". It need not be there.
std::filesystem::path voice_folder(const std::filesystem::path& project);

/// "talk-12.wav" in it, for script item 12. Whoever records a talk stores its length as the item's rehearsed
/// time; words that are changed lose that time, so a file whose length isn't the rehearsed time holds other
/// words and isn't used.
std::filesystem::path voice_file(const std::filesystem::path& folder, project::ScriptItemId item);

} // namespace luft::script
