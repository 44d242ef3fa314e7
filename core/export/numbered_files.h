// Files of one kind in a folder, told apart by a number: "row-01.png", "row-02.png" …
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

namespace luft::exports {

/// Makes the folder when it isn't there. Throws Error(cannot_write).
void make_folder(const std::filesystem::path& folder);

/// "row-01.png" of "row", 1 and ".png".
std::string numbered(std::string_view kind, std::size_t number, std::string_view ending);

/// Removes what a longer run has left: files named exactly so whose number is above `last`. All else is left
/// alone. Throws Error(cannot_write).
void remove_numbered_after(const std::filesystem::path& folder, std::string_view kind, std::size_t last,
                           std::string_view ending);

} // namespace luft::exports
