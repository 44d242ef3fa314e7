// Something to draw on: a picture in memory, an SVG, or the pages of a PDF. The only folder that knows Cairo
// and Pango is this one.
#pragma once

#include "sheet/colours.h"
#include "sheet/path.h"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace luft::sheet {

enum class Line { solid, dashed, dotted };
enum class Anchor { start, middle, end };

/// How words are set.
struct Type {
    double size = 12; ///< height of the line of type, in units
    bool bold = false;
    bool italic = false;

    bool operator==(const Type&) const = default;
};

/// The size of words as they would be set.
struct Extent {
    double width = 0, height = 0;
};

/// Units are pixels of a picture at scale 1, and points (1/72 inch) of a PDF. Text may be any UTF-8; it is
/// shaped by Pango with the fonts at hand.
class Canvas {
  public:
    /// A picture of `width` by `height` units; `scale` pixels a unit, for screens with small pixels.
    static Canvas picture(int width, int height, double scale = 1);
    /// A PDF whose pages have that size, kept in memory until `finish`.
    static Canvas pdf(const std::filesystem::path& file, double width, double height);
    /// A drawing of that size in CSS pixels, kept in memory until `take_svg`.
    static Canvas svg(double width, double height);

    Canvas(Canvas&&) noexcept;
    Canvas& operator=(Canvas&&) noexcept;
    ~Canvas();

    void clear(Colour colour);
    void fill(const Path& path, Colour colour);
    /// Slanting stripes of both colours.
    void fill_striped(const Path& path, Colour stripe, Colour ground);
    void stroke(const Path& path, Colour colour, double width, Line line = Line::solid);
    void line(double x1, double y1, double x2, double y2, Colour colour, double width,
              Line line = Line::solid);
    void box(double x, double y, double width, double height, Colour colour, double rounded = 0);
    void frame(double x, double y, double width, double height, Colour colour, double line_width,
               double rounded = 0, Line line = Line::solid);

    /// One line of words; `y` is its base line.
    void text(double x, double y, std::string_view words, Type type, Colour colour,
              Anchor anchor = Anchor::start);
    /// Words set in lines of at most `width`; `y` is the top. At most `most_lines`, the last with an
    /// ellipsis; 0 for no limit. Returns the height.
    double paragraph(double x, double y, double width, std::string_view words, Type type, Colour colour,
                     int most_lines = 0);
    [[nodiscard]] Extent extent(std::string_view words, Type type) const;
    [[nodiscard]] double paragraph_height(double width, std::string_view words, Type type,
                                          int most_lines = 0) const;

    /// Heights of the lines that `paragraph` sets the words in, top to bottom; one at least.
    [[nodiscard]] std::vector<double> line_heights(double width, std::string_view words, Type type) const;
    /// Sets only `count` lines of a paragraph, from line `first` (0 is the first) on; `y` is the top of that
    /// one.
    void lines(double x, double y, double width, std::string_view words, Type type, Colour colour,
               std::size_t first, std::size_t count);

    /// Everything drawn until the matching restore is moved, and hidden outside the clip.
    void save();
    void restore();
    void move(double dx, double dy);
    void zoom(double factor);
    void clip(double x, double y, double width, double height);

    /// Completes a drawing: a whole SVG 1.1 document in which every letter is an outline, so that it looks
    /// the same where our fonts are missing. Nothing can be drawn afterwards.
    [[nodiscard]] std::string take_svg();

    /// The next page of a PDF.
    void next_page();
    /// Completes a PDF under its name. Throws Error(cannot_write).
    void finish();

    /// Draws a picture in 8-bit RGB, rows without padding, scaled to the box.
    void image(double x, double y, double width, double height, std::span<const std::uint8_t> rgb,
               int columns, int rows);

    /// A picture's pixels: 32 bits each, blue, green, red, unused in memory order of a little-endian machine;
    /// `stride` bytes a row.
    struct Pixels {
        std::span<const std::uint8_t> bytes;
        int width = 0, height = 0, stride = 0;
    };
    [[nodiscard]] Pixels pixels();
    /// A picture as a PNG file, whole or not at all. Throws Error(cannot_write).
    void write_png(const std::filesystem::path& file);

  private:
    struct Surface;
    explicit Canvas(std::unique_ptr<Surface> surface);
    std::unique_ptr<Surface> surface_;
};

} // namespace luft::sheet
