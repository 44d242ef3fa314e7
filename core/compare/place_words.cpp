#include "compare/place_words.h"

#include "base/text.h"

#include <algorithm>

namespace luft::compare {
namespace {

constexpr Seconds kEarly{0.15}; // a word's edge and its note's are this far apart at most; own value

/// The whole word, of all its syllables, that the one at `i` belongs to.
std::string word_at(const std::vector<project::SungWord>& words, std::size_t i) {
    std::size_t first = i, last = i;
    while (first > 0 && words[first - 1].joins)
        --first;
    while (last + 1 < words.size() && words[last].joins)
        ++last;
    std::string text;
    for (std::size_t k = first; k <= last; ++k)
        text += words[k].text;
    while (!text.empty() && std::string_view(".,;:!?").find(text.back()) != std::string_view::npos)
        text.pop_back();
    return "'" + text + "'";
}

std::optional<std::string> last_begun(const std::vector<project::SungWord>& words, Seconds before) {
    const auto next = std::ranges::lower_bound(words, before, {}, &project::SungWord::at);
    if (next == words.begin()) return std::nullopt;
    return word_at(words, static_cast<std::size_t>(next - words.begin()) - 1);
}

/// The word there by both performances' words, or by those of the one that has any.
std::optional<std::string> word_there(const Wording& wording, Seconds a, Seconds b) {
    const auto of_a = last_begun(wording.words_a, a), of_b = last_begun(wording.words_b, b);
    if (of_a && of_b && *of_a != *of_b) return std::nullopt;
    return of_a ? of_a : of_b;
}

} // namespace

std::string after_text(const Wording& wording, Seconds a, Seconds b) {
    const auto word = word_there(wording, a, b);
    return word ? "after " + *word : "at " + clock_text(a);
}

std::string on_text(const Wording& wording, Span a, Span b) {
    const auto word = word_there(wording, a.start + kEarly, b.start + kEarly);
    return word ? "on " + *word : "at " + clock_text(a.start);
}

std::string line_text(const Wording& wording, Span a, Span b) {
    const auto word = word_there(wording, a.start + kEarly, b.start + kEarly);
    return word ? "in the line from " + *word : "in the line at " + clock_text(a.start);
}

std::string inside(const std::string& name) {
    return name == "The first" ? "the first" : name == "The second" ? "the second" : name;
}

} // namespace luft::compare
