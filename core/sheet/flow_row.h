// A row of cells side by side: the one kind of text block that a flow of pages is made of.
#pragma once

#include "sheet/canvas.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace luft::sheet {

/// A paragraph in a cell; without words it takes no room.
struct Text {
    std::string words; ///< any UTF-8; line ends are kept
    Type type = {};
    Colour colour = {};
    double gap = 0;       ///< above it, when it isn't the cell's first
    bool heading = false; ///< stays with at least two lines of what follows
};

/// Paragraphs below each other. All lengths in points.
struct Cell {
    double left = 0, width = 100;
    std::vector<Text> texts = {};
};

/// An upright line beside what a row says, on every page that the row goes on.
struct Bar {
    double left = 0, width = 3;
    Colour colour = {};
    bool twofold = false;
};

struct FlowRow {
    std::vector<Cell> cells = {};
    double above = 0, below = 0; ///< room inside the row, over and under the cells
    std::optional<Bar> bar = {};
    std::optional<Colour> rule = {}; ///< a line under the row
    std::function<void(Canvas& canvas, double top)> sign =
        {}; ///< drawn with the first lines; top of the cells
};

/// A row measured and cut into the parts between which a page may end. The tallest cell may go on on the next
/// page; the others stand beside its first lines.
class SetRow {
  public:
    SetRow(const Canvas& measuring, FlowRow row);

    /// Heights of the parts. The first holds the other cells and at least two lines, the last at least two
    /// lines, too; one part for a short row.
    [[nodiscard]] const std::vector<double>& parts() const { return parts_; }
    void draw(Canvas& canvas, double top, std::size_t first, std::size_t count) const;

  private:
    struct SetLine {
        std::size_t text = 0, line = 0;
        double height = 0, gap = 0;
    };
    using Lines = std::vector<SetLine>;

    void cut();
    void draw_lines(Canvas& canvas, const Cell& cell, const Lines& lines, double y, std::size_t from,
                    std::size_t to) const;

    FlowRow row_;
    std::vector<Lines> cells_;
    std::size_t main_ = 0;            ///< the tallest cell
    std::vector<double> parts_;       ///< heights
    std::vector<std::size_t> starts_; ///< of each part, the first line of the tallest cell; and the end
};

} // namespace luft::sheet
