#include "export/plain_text.h"

#include "base/text.h"

#include <algorithm>

namespace luft::exports {

std::size_t width_of(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

std::string one_line(std::string_view text) {
    std::string line = valid_utf8(text);
    std::replace_if(
        line.begin(), line.end(), [](unsigned char c) { return c < 0x20 || c == 0x7F; }, ' ');
    return line;
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
                out += margin + line + "\n";
                line.clear();
            }
            if (!word.empty()) line += (line.empty() ? "" : " ") + word;
            from = space + 1;
        }
        out += line.empty() ? "\n" : margin + line + "\n";
    }
    return out;
}

} // namespace luft::exports
