// What the window does with a project, without a window: opening, editing, laying out, painting.
#pragma once

#include <filesystem>

namespace luft::load {

/// Prints a line a piece of work: what, its processor time in milliseconds (the median of several where it
/// can be done several times), and the most that it may take. The project is changed.
void measure_window(const std::filesystem::path& project);

} // namespace luft::load
