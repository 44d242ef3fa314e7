// A table for people, on the terminal and in Markdown.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace luft::bench {

struct Table {
    std::string title;
    std::string note; ///< a sentence or two under the title; may be empty
    std::vector<std::string> head;
    std::vector<std::vector<std::string>> rows;
    std::vector<std::size_t> words = {0}; ///< columns set to the left; the others hold numbers

    [[nodiscard]] std::string text() const;
    [[nodiscard]] std::string markdown() const;
};

/// A number with that many digits; "–" for none.
std::string cell(std::optional<double> value, int digits);
/// A share in percent with one digit; "–" for none.
std::string percent(std::optional<double> share);
/// part / of; none of nothing.
std::optional<double> share(double part, double of);

} // namespace luft::bench
