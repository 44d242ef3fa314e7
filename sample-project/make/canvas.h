// A picture to draw on: smooth-edged shapes, nothing else.
#pragma once

#include "make/performances.h"

#include <cstdint>
#include <functional>
#include <span>
#include <vector>

namespace luft::sample {

struct Point {
    double x = 0, y = 0; ///< pixels from the left top
};

/// RGB picture. A shape covers a pixel by how far the pixel's middle lies inside its edge (distance fields),
/// which smooths edges over one pixel.
class Canvas {
  public:
    Canvas(int width, int height);

    /// From `high` at the top to `low` at row `until`, and `low` below it.
    void sky(Colour high, Colour low, double until);
    void ellipse(Point middle, double across, double down, Colour colour);
    /// A line of points, `thick` wide, with round ends and corners.
    void line(std::span<const Point> points, double thick, Colour colour);
    /// A convex shape, corners clockwise on the screen.
    void shape(std::span<const Point> corners, Colour colour);

    [[nodiscard]] int width() const { return width_; }
    [[nodiscard]] int height() const { return height_; }
    /// RGB, 8 bits each, rows top to bottom.
    [[nodiscard]] const std::vector<std::uint8_t>& bytes() const { return pixels_; }

  private:
    /// Paints where `outside` (distance to the edge, negative inside) says so, within a box.
    template <class Distance>
    void cover(Point low, Point high, Colour colour, const Distance& outside);

    int width_, height_;
    std::vector<std::uint8_t> pixels_;
};

Colour between(Colour a, Colour b, double share);

} // namespace luft::sample
