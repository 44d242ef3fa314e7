// The sheet on paper: pages as they are printed, and as a PDF.
#pragma once

#include "base/progress.h"
#include "sheet/layout.h"

#include <filesystem>
#include <memory>

namespace luft::sheet {

/// A4 upright, in points.
inline constexpr double kPageWidth = 595.3, kPageHeight = 841.9;

/// The whole sheet broken into pages: title, rows with their moments, the signs' meaning after the last row,
/// page numbers. The source must outlive it.
class Pages {
  public:
    explicit Pages(const profile::Source& source);

    /// At least one.
    [[nodiscard]] int count() const { return static_cast<int>(pages_.size()); }
    /// Draws a page (0 is the first) with its top left corner at the canvas' origin, in points, on paper that
    /// is white already.
    void draw(Canvas& canvas, int page) const;
    /// What a place of a page shows, in points; none beside the rows.
    [[nodiscard]] std::optional<Seconds> time_at(int page, double x, double y) const;

  private:
    struct Piece {
        std::size_t row = 0;
        double top = 0; ///< on its page
    };
    struct Page {
        std::vector<Piece> rows;
        std::optional<double> legend; ///< where it begins
    };

    Canvas measuring_;
    std::unique_ptr<Layout> layout_;
    std::vector<Page> pages_;
};

/// Writes all pages. Returns their number. Throws Error(cannot_write), Stopped; then nothing stands under the
/// name.
int write_pdf(const profile::Source& source, const std::filesystem::path& file,
              const Progress& progress = {});

} // namespace luft::sheet
