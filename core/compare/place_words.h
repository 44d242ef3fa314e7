// Places of a song in words.
#pragma once

#include "compare/differences.h"

#include <string>

namespace luft::compare {

/// "after 'home'", by the last word begun before A's time; "at 0:10.9 of the first" where no words are known.
std::string after_text(const Wording& wording, Seconds a);
/// "on 'home'", the word that stands at A's note; "at 0:10.9" where none is known.
std::string on_text(const Wording& wording, Span a);
/// "in the line from 'over'"; "in the line at 0:10.9".
std::string line_text(const Wording& wording, Span a);
/// First letter small: "The second" inside a sentence. A label stays as it is.
std::string inside(const std::string& name);

} // namespace luft::compare
