// Words that lines can be made of. Setting them takes time that grows with the square of the length of a
// paragraph, of what can't be broken, and of the marks on a letter; nobody writes such, but a file may hold
// anything.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace luft::sheet {

/// The same text with no more than 200 marks on each letter; the others go. No letter of a language has more
/// than 30 (Unicode UAX #15, 13: Stream-Safe Text Format).
std::string with_few_marks(std::string_view text);

/// The same text, with few marks and with a place to break a line (U+200B, a space of no width) in every run
/// of more than 200 characters that has no white space. No word of a language is that long.
std::string breakable(std::string_view text);

/// The text in pieces of some 4,000 bytes, to be set below each other: cut at a line's end where there is one
/// in the second half of a piece, else at white space, else anywhere between letters. What it was cut at
/// goes. At least one piece.
std::vector<std::string> pieces(std::string_view text);

/// As much of the text as may ever be seen of it in so many lines.
std::string_view beginning(std::string_view text, int lines);

} // namespace luft::sheet
