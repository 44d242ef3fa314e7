// What every report on two performances says in the same words.
#pragma once

#include "compare/comparison.h"

#include <string>
#include <vector>

namespace luft::exports {

/// "0:05.8-0:16.3".
std::string span_words(Span span);

/// "B sings 3 semitones higher; its A4 lies 2 cents lower".
std::string key_words(const compare::Comparison& c);
/// "B runs at 114 % of the speed of A, between 110 and 121 %".
std::string tempo_words(const compare::Comparison& c);
/// "53 pairs; inside these phrases A sings 0 more, B 3 more".
std::string notes_words(const compare::Comparison& c);

/// First phrase's start to last phrase's end.
Span whole_of(const std::vector<std::size_t>& phrases, const std::vector<marks::Phrase>& all);

/// A row of phrases that belong together; "no counterpart" where there is none.
struct PhraseLine {
    std::string a, b;
};
/// Pairs in order of time, then those of A without counterpart, then those of B.
std::vector<PhraseLine> phrase_lines(const compare::Comparison& c);

/// What isn't sure, then what only one of the two has; sentences without a full stop.
std::vector<std::string> gaps_words(const compare::Comparison& c);

/// "-6.2 dB", "38 cents"; empty for what is counted.
std::string size_words(const compare::Difference& d);

} // namespace luft::exports
