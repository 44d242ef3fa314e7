// How many lines a plain text takes, told from the widths of its words alone.
#pragma once

#include <functional>
#include <optional>
#include <string_view>

namespace luft::sheet {

/// Lines of `text` in `width`, each broken at the last space that lets it fit, as Pango breaks them (Unicode
/// UAX #14). Nothing where only setting it can tell: it has more than words of ASCII letters and digits with
/// . , ; : ! ? behind and single spaces between, or a line ends too near the edge for a sum of widths.
/// `width_of` gives the width of a word, `space` that of a space, in the units of `width`.
std::optional<int> plain_lines(std::string_view text, double width, double space,
                               const std::function<double(std::string_view)>& width_of);

} // namespace luft::sheet
