// Which version of the program this is.
#pragma once

#include <string>

namespace luft::files {

/// As the build knows it (CMakeLists.txt), "1.0.0".
std::string version();

} // namespace luft::files
