// Files out, whole or not at all.
#pragma once

#include <filesystem>
#include <string_view>

namespace luft {

/// Writes the text beside `file` and renames it there when it is safely on disk, replacing what was there.
/// Throws Error(cannot_write); then nothing has changed.
void write_file(const std::filesystem::path& file, std::string_view text);

} // namespace luft
