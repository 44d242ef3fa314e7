// The manual page of `luftpause`, from the verbs' own help.
#pragma once

#include <string>

namespace luft::install {

/// In the man(7) macros: a section a verb with its actions, options and example. Holds the version, but no
/// date.
std::string manual();

} // namespace luft::install
