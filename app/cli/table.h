// Tables and paragraphs for a terminal.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace luft::cli {

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

/// Text on one line without control characters, so that a project's words can't steer the terminal.
std::string one_line(std::string_view text);

/// Words broken to lines of at most `width` characters, each line indented; line ends of the text stay.
std::string paragraph(std::string_view text, int indent, int width = 96);

/// "1 breath", "2 breaths"; the plural is the noun with an s, or `plural` where it is another.
std::string counted(std::size_t n, std::string_view noun, std::string_view plural = {});

} // namespace luft::cli
