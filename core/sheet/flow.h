// Rows and pictures flowing down pages of paper: no line is cut, nothing overlaps.
#pragma once

#include "sheet/flow_row.h"
#include "sheet/pages.h"

#include <cstddef>
#include <functional>
#include <memory>
#include <vector>

namespace luft::sheet {

/// Where on its page a flow stands, in points.
struct Paper {
    double width = kPageWidth, height = kPageHeight;
    double edge = 46; ///< white at all four sides
    double foot = 20; ///< kept free above the lower edge

    [[nodiscard]] double room_across() const { return width - 2 * edge; }
    [[nodiscard]] double room_down() const { return height - 2 * edge - foot; }
};

class Flow {
  public:
    /// Measures on `measuring`, which must outlive the flow and be of the kind that is drawn on: letters are
    /// as wide as the surface makes them.
    explicit Flow(const Canvas& measuring, Paper paper = {}) : measuring_(measuring), paper_(paper) {}

    [[nodiscard]] const Paper& paper() const { return paper_; }

    void row(FlowRow row);
    /// One paragraph over the whole width.
    void text(Text text, double above = 0, double below = 0);
    /// Something drawn, whole, with its top left corner at the canvas' origin; not higher than a page.
    void picture(double height, std::function<void(Canvas&)> draw);
    /// White, left out at a page's top.
    void space(double height);

    /// What is added until `end_keep` stays on one page when one page has room for it.
    void keep();
    void end_keep() { kept_ = false; }
    /// A row that is set here, and again at the top of every page that the rows until `end_head` go on.
    void head(FlowRow row);
    void end_head() { head_ = kNone; }

    /// Breaks what was added so far into pages; at least one.
    [[nodiscard]] int pages();
    /// Draws a page (0 is the first) with the paper's top left corner at the canvas' origin.
    void draw(Canvas& canvas, int page);

  private:
    static constexpr std::size_t kNone = static_cast<std::size_t>(-1);
    struct Block {
        std::vector<double> parts;
        std::function<void(Canvas&, double top, std::size_t first, std::size_t count)> draw;
        bool white = false;
        bool kept = false;        ///< belongs to what is kept together
        bool with_last = false;   ///< … and so does the block before
        std::size_t head = kNone; ///< block that stands above it on a new page
    };
    /// Parts of a block that follow each other on a page.
    struct Run {
        std::size_t block, first, count;
        double top;
    };
    struct Place;

    void add(Block block);
    /// Room that must be left on a page for a block to begin there, where it asks for more than its first
    /// part.
    [[nodiscard]] double needed(std::size_t block) const;

    const Canvas& measuring_;
    Paper paper_;
    std::vector<Block> blocks_;
    bool kept_ = false, first_kept_ = false;
    std::size_t head_ = kNone;
    std::vector<std::vector<Run>> pages_;
};

} // namespace luft::sheet
