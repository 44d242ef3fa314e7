// Who may read a file that is made.
#pragma once

#include <sys/types.h>

namespace luft {

/// Permissions of a new file: everybody may read and write, but for what the user's mask (umask) takes away.
/// Asking doesn't change the mask, not even for a moment, so that a file made meanwhile by another thread
/// isn't open to everybody.
mode_t mode_of_new_files();

} // namespace luft
