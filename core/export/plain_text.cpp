#include "export/plain_text.h"

#include "base/shown_text.h"

#include <algorithm>

namespace luft::exports {

std::size_t width_of(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

std::string one_line(std::string_view text) {
    // A control character may stand between words: it leaves a gap, other than on a page.
    std::string line(text);
    std::replace_if(
        line.begin(), line.end(), [](unsigned char c) { return c < 0x20 || c == 0x7F; }, ' ');
    line = shown(line);
    std::replace(line.begin(), line.end(), '\n', ' ');
    return with_directions_closed(line);
}

std::string paragraph(std::string_view text, int indent, int width) {
    const std::string margin(static_cast<std::size_t>(indent), ' ');
    const std::size_t most = static_cast<std::size_t>(std::max(width - indent, 20));
    std::string out;
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        const std::string source = one_line(text.substr(0, end));
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        std::string line;
        std::size_t from = 0;
        while (from < source.size()) {
            const std::size_t space = std::min(source.find(' ', from), source.size());
            const std::string word = source.substr(from, space - from);
            if (!line.empty() && width_of(line) + 1 + width_of(word) > most) {
                out += margin + with_directions_closed(line) + "\n";
                line.clear();
            }
            if (!word.empty()) line += (line.empty() ? "" : " ") + word;
            from = space + 1;
        }
        out += line.empty() ? "\n" : margin + with_directions_closed(line) + "\n";
    }
    return out;
}

} // namespace luft::exports
