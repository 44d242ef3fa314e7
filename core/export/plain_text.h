// Plain text for a terminal or a text file.
#pragma once

#include <string>
#include <string_view>

namespace luft::exports {

/// Characters, counting a UTF-8 sequence as one. Wide scripts take two columns; they are rare in a table
/// here.
std::size_t width_of(std::string_view text);

/// Text on one line as base/shown_text.h has it, with spaces for control characters, so that a project's
/// words can't steer the terminal.
std::string one_line(std::string_view text);

/// Words broken to lines of at most `width` characters, each line indented; line ends of the text stay. As
/// `one_line`.
std::string paragraph(std::string_view text, int indent, int width = 96);

} // namespace luft::exports
