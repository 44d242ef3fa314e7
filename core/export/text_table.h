// Tables for a terminal.
#pragma once

#include "export/plain_text.h"

#include <string>
#include <string_view>
#include <vector>

namespace luft::exports {

enum class Align { left, right };

/// Columns as wide as their widest cell, two spaces apart; a left-aligned last column runs on.
class Table {
  public:
    struct Column {
        std::string title;
        Align align = Align::left;
    };

    explicit Table(std::vector<Column> columns);
    /// As many cells as there are columns.
    void add(std::vector<std::string> cells);
    [[nodiscard]] bool empty() const { return rows_.empty(); }
    /// The titles and the rows, each with a line end.
    [[nodiscard]] std::string text() const;

  private:
    std::vector<Column> columns_;
    std::vector<std::vector<std::string>> rows_;
};

} // namespace luft::exports
