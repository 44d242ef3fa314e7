// Places of a song in words.
#pragma once

#include "compare/differences.h"

#include <string>

namespace luft::compare {

/// All take a place as both have it. Words are spread under notes by guess (project/spread_words.h), under
/// each performance's own: where both have words there and they aren't the same, one of them is wrong, and
/// A's time is said instead.

/// "after 'home'", by the last word begun before; "at 0:10.9" where no words are known.
std::string after_text(const Wording& wording, Seconds a, Seconds b);
/// "on 'home'", the word that stands at the note; "at 0:10.9" where none is known.
std::string on_text(const Wording& wording, Span a, Span b);
/// "in the line from 'over'"; "in the line at 0:10.9".
std::string line_text(const Wording& wording, Span a, Span b);
/// First letter small: "The second" inside a sentence. A label stays as it is.
std::string inside(const std::string& name);

} // namespace luft::compare
