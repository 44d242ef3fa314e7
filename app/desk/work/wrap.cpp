#include "desk/work/wrap.h"

#include <algorithm>

namespace luft::desk {
namespace {

/// Where the character at `at` ends.
std::size_t character_end(const std::string& text, std::size_t at) {
    ++at;
    while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80)
        ++at;
    return at;
}

class Lines {
  public:
    Lines(int width, const std::function<int(const std::string&)>& width_of)
        : width_(width), width_of_(width_of) {}

    void word(const std::string& word) {
        const std::string with = line_.empty() ? word : line_ + " " + word;
        if (width_of_(with) <= width_) {
            line_ = with;
            return;
        }
        if (!line_.empty()) end();
        line_ = word;
        while (width_of_(line_) > width_)
            break_line();
    }
    void end() {
        lines_.push_back(line_);
        line_.clear();
    }
    std::vector<std::string> take() { return std::move(lines_); }

  private:
    /// Ends the line after as many characters as fit, at least one.
    void break_line() {
        std::size_t cut = character_end(line_, 0);
        for (std::size_t next = cut; next < line_.size(); cut = next) {
            next = character_end(line_, cut);
            if (width_of_(line_.substr(0, next)) > width_) break;
        }
        if (cut >= line_.size()) { // one character alone is too wide
            width_ = width_of_(line_);
            return;
        }
        lines_.push_back(line_.substr(0, cut));
        line_.erase(0, cut);
    }

    int width_;
    const std::function<int(const std::string&)>& width_of_;
    std::vector<std::string> lines_;
    std::string line_;
};

} // namespace

std::vector<std::string> wrapped(const std::string& text, int width,
                                 const std::function<int(const std::string&)>& width_of) {
    Lines lines(width, width_of);
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        for (std::size_t word = at; word < end;) {
            word = std::min(text.find_first_not_of(" \t\r", word), end);
            const std::size_t word_end = std::min(text.find_first_of(" \t\r", word), end);
            if (word < word_end) lines.word(text.substr(word, word_end - word));
            word = word_end;
        }
        lines.end();
        at = end + 1;
    }
    return lines.take();
}

int largest(int least, int most, const std::function<bool(int)>& fits) {
    while (least < most) {
        const int middle = (least + most + 1) / 2;
        if (fits(middle))
            least = middle;
        else
            most = middle - 1;
    }
    return least;
}

std::size_t spoken_line(const std::vector<std::string>& lines, double share) {
    std::size_t all = 0;
    for (const auto& line : lines)
        all += line.size() + 1;
    const double until = std::clamp(share, 0.0, 1.0) * static_cast<double>(all);
    std::size_t passed = 0;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        passed += lines[i].size() + 1;
        if (static_cast<double>(passed) > until) return i;
    }
    return lines.empty() ? 0 : lines.size() - 1;
}

} // namespace luft::desk
