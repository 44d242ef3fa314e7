#include "export/text_table.h"

#include <algorithm>

namespace luft::exports {
Table::Table(std::vector<Column> columns) : columns_(std::move(columns)) {}

void Table::add(std::vector<std::string> cells) {
    for (std::string& cell : cells)
        cell = one_line(cell);
    cells.resize(columns_.size());
    rows_.push_back(std::move(cells));
}

std::string Table::text() const {
    std::vector<std::size_t> widths;
    for (std::size_t c = 0; c < columns_.size(); ++c) {
        std::size_t widest = width_of(columns_[c].title);
        for (const auto& row : rows_)
            widest = std::max(widest, width_of(row[c]));
        widths.push_back(widest);
    }
    std::string out;
    const auto line = [&](const auto& cell) {
        std::string text;
        for (std::size_t c = 0; c < columns_.size(); ++c) {
            if (c > 0) text += "  ";
            const std::string pad(widths[c] - width_of(cell(c)), ' ');
            text += columns_[c].align == Align::right ? pad + cell(c) : cell(c) + pad;
        }
        text.erase(text.find_last_not_of(' ') + 1);
        out += text + "\n";
    };
    line([&](std::size_t c) { return columns_[c].title; });
    for (const auto& row : rows_)
        line([&](std::size_t c) { return row[c]; });
    return out;
}

} // namespace luft::exports
