// Words on lines, as large as they fit.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace luft::desk {

/// A text broken into lines that are at most `width` wide. Line ends in the text stay, also empty lines; a
/// word that is wider alone is broken between characters. `width_of` measures a piece of a line.
std::vector<std::string> wrapped(const std::string& text, int width,
                                 const std::function<int(const std::string&)>& width_of);

/// The largest size from `least` to `most` at which `fits` is true, found by halving; `least` when none does.
int largest(int least, int most, const std::function<bool(int)>& fits);

/// The line that is being spoken when this share (0 to 1) of the talk has passed: each line takes as long as
/// it has characters. 0 when there are none.
std::size_t spoken_line(const std::vector<std::string>& lines, double share);

} // namespace luft::desk
