#include "sheet/breakable.h"

#include <glib.h>

#include <algorithm>
#include <utility>

namespace luft::sheet {
namespace {

constexpr int kLongestRun = 200, kMostMarks = 200; ///< characters
constexpr std::size_t kPiece = 4000;               ///< bytes
constexpr const char* kNoWidth = "\u200b";
constexpr gunichar kJoiner = 0x200d;

/// Steps through a text, character by character; what is no UTF-8 byte by byte.
class Letters {
  public:
    explicit Letters(std::string_view text) : at_(text.data()), end_(at_ + text.size()) {}

    [[nodiscard]] bool over() const { return at_ >= end_; }
    /// Goes on by one, which it gives.
    std::string_view take() {
        const gunichar c = g_utf8_get_char_validated(at_, end_ - at_);
        const bool is_char = static_cast<gint32>(c) >= 0;
        const char* next = is_char ? g_utf8_next_char(at_) : at_ + 1;
        // Marks belong to the letter before; a joiner ties both its neighbours.
        begins_ = !is_char || (!g_unichar_ismark(c) && c != kJoiner && !joined_);
        space_ = is_char && g_unichar_isspace(c);
        joined_ = is_char && c == kJoiner;
        return {std::exchange(at_, next), next};
    }
    /// Of the one taken last: whether a letter begins with it, and whether it is white space.
    [[nodiscard]] bool begins() const { return begins_; }
    [[nodiscard]] bool space() const { return space_; }

  private:
    const char *at_, *end_;
    bool begins_ = true, space_ = false, joined_ = false;
};

/// Where a piece of the text ends, and where the next begins.
std::pair<std::size_t, std::size_t> cut(std::string_view text) {
    if (text.size() <= kPiece) return {text.size(), text.size()};
    if (const std::size_t line = text.rfind('\n', kPiece);
        line != std::string_view::npos && line >= kPiece / 2)
        return {line, line + 1};
    std::size_t at = 0, letter = 0, space = 0, after = 0;
    for (Letters letters(text); !letters.over();) {
        const std::string_view one = letters.take();
        if (letters.begins()) {
            if (at > kPiece && letter == 0) letter = at; // after one with marks without end
            if (at > kPiece) break;
            letter = at;
        }
        if (letters.space() && at <= kPiece) space = at, after = at + one.size();
        at += one.size();
    }
    if (space >= kPiece / 2) return {space, after};
    return letter > 0 ? std::pair(letter, letter) : std::pair(text.size(), text.size());
}

} // namespace

std::string with_few_marks(std::string_view text) {
    if (text.size() <= kMostMarks) return std::string(text);
    std::string out;
    out.reserve(text.size());
    int marks = 0;
    for (Letters letters(text); !letters.over();) {
        const std::string_view one = letters.take();
        marks = letters.begins() ? 0 : marks + 1;
        if (marks <= kMostMarks) out += one;
    }
    return out;
}

std::string breakable(std::string_view text) {
    if (text.size() <= kLongestRun) return std::string(text);
    const std::string few = with_few_marks(text);
    std::string out;
    out.reserve(few.size());
    int run = 0;
    for (Letters letters(few); !letters.over();) {
        const std::string_view one = letters.take();
        if (letters.begins()) run = letters.space() ? 0 : run + 1;
        if (run > kLongestRun && letters.begins()) {
            out += kNoWidth;
            run = 1;
        }
        out += one;
    }
    return out;
}

std::string_view beginning(std::string_view text, int lines) {
    std::size_t end = 0;
    for (int line = 0; line < lines && end < text.size(); ++line)
        end += std::max(cut(text.substr(end)).second, std::size_t(1));
    return text.substr(0, end);
}

std::vector<std::string> pieces(std::string_view text) {
    std::vector<std::string> all;
    do {
        const auto [end, next] = cut(text);
        all.emplace_back(text.substr(0, end));
        text.remove_prefix(next);
    } while (!text.empty());
    return all;
}

} // namespace luft::sheet
