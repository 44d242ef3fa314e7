// Words that lines can be made of. Pango takes time that grows with the square of the length of a paragraph,
// and of what can't be broken; nobody writes such, but a file may hold anything.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace luft::sheet {

/// The same text with a place to break a line (U+200B, a space of no width) in every run of more than 200
/// characters that has no white space. Marks stay with their letters. No word of a language is that long.
std::string breakable(std::string_view text);

/// The text in pieces of some 4,000 bytes, to be set below each other: cut at a line's end where there is one
/// in the second half of a piece, else at white space, else anywhere between letters. What it was cut at
/// goes. At least one piece.
std::vector<std::string> pieces(std::string_view text);

} // namespace luft::sheet
