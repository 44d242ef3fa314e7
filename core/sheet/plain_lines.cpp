#include "sheet/plain_lines.h"

#include <algorithm>
#include <cmath>

namespace luft::sheet {
namespace {

constexpr std::size_t kLongestWord = 40; // letters; what is longer may be broken inside
/// How far a set line may differ from the sum of its words, each on its own: signs move closer to each other
/// (kerning), and ends are rounded to whole units.
constexpr double kEnds = 1, kPerWord = 0.5;

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

bool is_plain(std::string_view word) {
    constexpr std::string_view kBehind = ".,;:!?";
    const auto end = std::ranges::find_if_not(word, is_letter);
    return end != word.begin() && word.size() <= kLongestWord &&
           std::all_of(end, word.end(), [&](char c) { return kBehind.find(c) != std::string_view::npos; });
}

} // namespace

std::optional<int> plain_lines(std::string_view text, double width, double space,
                               const std::function<double(std::string_view)>& width_of) {
    int lines = 1, in_line = 0;
    double end = 0;
    const auto too_near = [&] { return std::abs(end - width) < kEnds + kPerWord * in_line; };
    for (;;) {
        const std::size_t length = std::min(text.find(' '), text.size());
        const std::string_view word = text.substr(0, length);
        if (!is_plain(word)) return std::nullopt;
        const double wide = width_of(word);
        end = in_line > 0 ? end + space + wide : wide;
        if (too_near()) return std::nullopt;
        if (end > width && in_line > 0) {
            ++lines;
            in_line = 0;
            end = wide;
            if (too_near()) return std::nullopt;
        }
        if (end > width) return std::nullopt; // wider than a line: broken inside
        ++in_line;
        if (length == text.size()) return lines;
        text.remove_prefix(length + 1);
    }
}

} // namespace luft::sheet
