// Where a text is broken into captions: the cheapest way through all possible breaks (Knuth & Plass 1981 do
// the same for paragraphs).
#include "base/shown_text.h"
#include "export/captions.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace luft::exports {
namespace {

bool starts_character(char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
}

std::size_t characters(const std::string& text) {
    return static_cast<std::size_t>(std::ranges::count_if(text, starts_character));
}

/// Words without white space and control characters, none longer than a line.
std::vector<std::string> words_of(const std::string& text) {
    std::vector<std::string> words;
    std::string word;
    std::size_t length = 0;
    const auto close = [&] {
        if (!word.empty()) words.push_back(std::move(word));
        word.clear();
        length = 0;
    };
    for (const char c : shown(text)) {
        const auto u = static_cast<unsigned char>(c);
        if (u <= 0x20 || u == 0x7F) {
            if (u == 0x7F || (u < 0x20 && u != '\t' && u != '\n' && u != '\r')) continue;
            close();
            continue;
        }
        if (starts_character(c) && ++length > kCaptionLine) {
            close();
            length = 1;
        }
        word += c;
    }
    close();
    return words;
}

/// What a break after this word costs, beside the shape: nothing at a sentence's end.
double break_cost(const std::string& word) {
    std::string_view w = word;
    for (const std::string_view close : {"”", "’", "\"", ")", "»"})
        if (w.ends_with(close)) w.remove_suffix(close.size());
    if (w.empty()) return 30;
    if (w.ends_with("…") || std::string_view(".!?").find(w.back()) != std::string_view::npos) return 0;
    if (std::string_view(",;:").find(w.back()) != std::string_view::npos) return 12;
    return 30;
}

struct Shape {
    std::size_t lines = 0;
    std::size_t break_after = 0; ///< words on the first of two lines
    double cost = 0;
};

/// The best shape of words `from` to `to` as one caption; none when they don't fit.
std::optional<Shape> shape_of(const std::vector<std::string>& words, const std::vector<std::size_t>& lengths,
                              std::size_t from, std::size_t to) {
    std::size_t total = to - from - 1;
    for (std::size_t i = from; i < to; ++i)
        total += lengths[i];
    if (total > kCaptionLines * kCaptionLine) return std::nullopt;
    constexpr double kShort = 16; ///< characters below which a caption flits by
    const double flit =
        total < static_cast<std::size_t>(kShort) ? 2 * (kShort - static_cast<double>(total)) : 0;
    if (total <= kCaptionLine) return Shape{1, to - from, flit};
    std::optional<Shape> best;
    std::size_t first = 0;
    for (std::size_t i = from; i + 1 < to; ++i) {
        first += lengths[i] + (i > from ? 1 : 0);
        const std::size_t second = total - first - 1;
        if (first > kCaptionLine || second > kCaptionLine) continue;
        const double uneven = std::abs(static_cast<double>(first) - static_cast<double>(second)) / 4;
        const double cost = uneven + break_cost(words[i]) / 4;
        if (!best || cost < best->cost) best = Shape{2, i + 1 - from, cost};
    }
    return best;
}

std::string joined(const std::vector<std::string>& words, std::size_t from, std::size_t to) {
    std::string line;
    for (std::size_t i = from; i < to; ++i)
        line += (i > from ? " " : "") + words[i];
    return with_directions_closed(line);
}

} // namespace

std::vector<std::vector<std::string>> caption_lines(const std::string& text) {
    constexpr double kEachCaption = 20; ///< keeps captions from getting more than needed
    const auto words = words_of(text);
    std::vector<std::size_t> lengths;
    for (const auto& w : words)
        lengths.push_back(characters(w));

    // cheapest[i]: the cheapest way to break the first i words.
    struct Way {
        double cost = std::numeric_limits<double>::infinity();
        std::size_t from = 0;
        Shape shape;
    };
    std::vector<Way> cheapest(words.size() + 1);
    cheapest[0].cost = 0;
    for (std::size_t to = 1; to <= words.size(); ++to) {
        for (std::size_t from = to; from-- > 0;) {
            if (from + kCaptionLines * kCaptionLine < to) break;
            const auto shape = shape_of(words, lengths, from, to);
            if (!shape) continue;
            const double cost = cheapest[from].cost + shape->cost + break_cost(words[to - 1]) + kEachCaption;
            if (cost < cheapest[to].cost) cheapest[to] = {cost, from, *shape};
        }
    }
    std::vector<std::vector<std::string>> out;
    for (std::size_t to = words.size(); to > 0; to = cheapest[to].from) {
        const Way& way = cheapest[to];
        const std::size_t middle = way.from + way.shape.break_after;
        std::vector<std::string> lines{joined(words, way.from, middle)};
        if (middle < to) lines.push_back(joined(words, middle, to));
        out.push_back(std::move(lines));
    }
    std::ranges::reverse(out);
    return out;
}

} // namespace luft::exports
