#include "bench/table.h"

#include "base/text.h"

#include <algorithm>

namespace luft::bench {
namespace {

/// Columns on a terminal, not bytes.
std::size_t width_of(const std::string& s) {
    return static_cast<std::size_t>(
        std::ranges::count_if(s, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

bool is_words(const Table& t, std::size_t column) {
    return std::ranges::count(t.words, column) > 0;
}

} // namespace

std::string Table::text() const {
    std::vector<std::size_t> widths;
    for (const std::string& h : head)
        widths.push_back(width_of(h));
    for (const auto& row : rows)
        for (std::size_t k = 0; k < row.size(); ++k)
            widths[k] = std::max(widths[k], width_of(row[k]));
    std::string out = title + "\n";
    const auto line = [&](const std::vector<std::string>& cells) {
        for (std::size_t k = 0; k < cells.size(); ++k) {
            const std::string gap(widths[k] - width_of(cells[k]), ' ');
            out += (k == 0 ? "" : "  ") + (is_words(*this, k) ? cells[k] + gap : gap + cells[k]);
        }
        out += "\n";
    };
    line(head);
    for (const auto& row : rows)
        line(row);
    return out + "\n";
}

std::string Table::markdown() const {
    std::string out = "## " + title + "\n\n" + (note.empty() ? "" : note + "\n\n");
    const auto line = [&](const std::vector<std::string>& cells) {
        for (const std::string& c : cells)
            out += "| " + c + " ";
        out += "|\n";
    };
    line(head);
    for (std::size_t k = 0; k < head.size(); ++k)
        out += (k == 0 ? "|" : "") + std::string(is_words(*this, k) ? "---|" : "---:|");
    out += "\n";
    for (const auto& row : rows)
        line(row);
    return out + "\n";
}

std::string cell(std::optional<double> value, int digits) {
    return value ? fixed(*value, digits) : "–";
}

std::string percent(std::optional<double> share) {
    return share ? fixed(100 * *share, 1) : "–";
}

std::optional<double> share(double part, double of) {
    return of > 0 ? std::optional(part / of) : std::nullopt;
}

} // namespace luft::bench
