#include "script/voices.h"

#include <string>

namespace luft::script {

std::filesystem::path voice_folder(const std::filesystem::path& project) {
    return project.parent_path() / (project.stem().string() + "-voice");
}

std::filesystem::path voice_file(const std::filesystem::path& folder, project::ScriptItemId item) {
    return folder / ("talk-" + std::to_string(item.value) + ".wav");
}

} // namespace luft::script
