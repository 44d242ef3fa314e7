// The words of a piece, taken apart into what is sung on notes of its own.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace luft::project {

/// A syllable, or a word that isn't divided.
struct Syllable {
    std::string text;
    bool joins = false;     ///< a hyphen was typed after it
    int notes = 1;          ///< how many it asks for: as many as it has vowels, runs of vowels as one
    bool ends_line = false; ///< the last one of its line
    bool operator==(const Syllable&) const = default;
};

using SungLine = std::vector<Syllable>;

/// One line of text is one sung line; blank lines are left out. Words are divided where a hyphen was typed
/// ("wa-ter", or "wa- ter") and nowhere else. What holds neither letter nor digit (a dash between words)
/// isn't sung. Vowels are those of the Latin, Greek and Cyrillic letters; a word of other letters asks for
/// one note. In a text that has one of the words "the", "and", "you", "my" an e at a word's end (-e, -es,
/// -ed) is mute. A syllable of a divided word asks for one note. (Counting runs of vowels is common practice,
/// no source; it steers where spare notes go, and nothing else.)
std::vector<SungLine> sung_lines(std::string_view words);

} // namespace luft::project
