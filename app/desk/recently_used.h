// Keeps names of recordings and projects out of the desktop's list of recently used files.
#pragma once

#include <string>

namespace luft::desk {

/// From now on the file dialogs keep their list of recently used files in `file`, which only we read, instead
/// of in the one that all programs share and that lies outside the places that we write to. To be called
/// before the first dialog. Does nothing where the windows aren't made by GTK 3.
void keep_recently_used_in(const std::string& file);

} // namespace luft::desk
