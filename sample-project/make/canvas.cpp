#include "make/canvas.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace luft::sample {
namespace {

double distance_to_stretch(Point p, Point a, Point b) {
    const double dx = b.x - a.x, dy = b.y - a.y, length = dx * dx + dy * dy;
    const double t = length > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / length, 0.0, 1.0) : 0;
    const double x = p.x - a.x - t * dx, y = p.y - a.y - t * dy;
    return std::sqrt(x * x + y * y);
}

std::array<double, 3> values(Colour c) {
    return {255 * std::clamp(c.red, 0.0, 1.0), 255 * std::clamp(c.green, 0.0, 1.0),
            255 * std::clamp(c.blue, 0.0, 1.0)};
}

} // namespace

Colour between(Colour a, Colour b, double share) {
    return {a.red + (b.red - a.red) * share, a.green + (b.green - a.green) * share,
            a.blue + (b.blue - a.blue) * share};
}

Canvas::Canvas(int width, int height)
    : width_(width), height_(height),
      pixels_(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 3) {}

template <class Distance>
void Canvas::cover(Point low, Point high, Colour colour, const Distance& outside) {
    const int x0 = std::max(0, static_cast<int>(low.x) - 1),
              x1 = std::min(width_ - 1, static_cast<int>(high.x) + 1);
    const int y0 = std::max(0, static_cast<int>(low.y) - 1),
              y1 = std::min(height_ - 1, static_cast<int>(high.y) + 1);
    const std::array<double, 3> ink = values(colour);
    for (int y = y0; y <= y1; ++y)
        for (int x = x0; x <= x1; ++x) {
            const double share = std::clamp(0.5 - outside(Point{x + 0.5, y + 0.5}), 0.0, 1.0);
            if (share <= 0) continue;
            std::uint8_t* pixel = pixels_.data() + 3 * (y * width_ + x);
            for (std::size_t k = 0; k < 3; ++k)
                pixel[k] = static_cast<std::uint8_t>(pixel[k] + (ink[k] - pixel[k]) * share + 0.5);
        }
}

void Canvas::sky(Colour high, Colour low, double until) {
    for (int y = 0; y < height_; ++y) {
        const Colour c = between(high, low, std::clamp(y / until, 0.0, 1.0));
        const std::array<double, 3> ink = values(c);
        for (int x = 0; x < width_; ++x)
            for (std::size_t k = 0; k < 3; ++k)
                pixels_[static_cast<std::size_t>(3 * (y * width_ + x)) + k] =
                    static_cast<std::uint8_t>(ink[k] + 0.5);
    }
}

void Canvas::ellipse(Point m, double across, double down, Colour colour) {
    const double a = std::max(across / 2, 0.1), b = std::max(down / 2, 0.1);
    cover({m.x - a, m.y - b}, {m.x + a, m.y + b}, colour, [=](Point p) {
        // First-order distance: the implicit function over its slope.
        const double x = (p.x - m.x) / a, y = (p.y - m.y) / b, k = std::sqrt(x * x + y * y);
        const double gx = x / a, gy = y / b, slope = std::sqrt(gx * gx + gy * gy);
        return slope > 0 ? k * (k - 1) / slope : -std::min(a, b);
    });
}

void Canvas::line(std::span<const Point> points, double thick, Colour colour) {
    if (points.empty()) return;
    Point low = points[0], high = points[0];
    for (const Point p : points) {
        low = {std::min(low.x, p.x - thick), std::min(low.y, p.y - thick)};
        high = {std::max(high.x, p.x + thick), std::max(high.y, p.y + thick)};
    }
    cover(low, high, colour, [&](Point p) {
        double nearest = distance_to_stretch(p, points[0], points[0]);
        for (std::size_t k = 1; k < points.size(); ++k)
            nearest = std::min(nearest, distance_to_stretch(p, points[k - 1], points[k]));
        return nearest - thick / 2;
    });
}

void Canvas::shape(std::span<const Point> corners, Colour colour) {
    Point low = corners[0], high = corners[0];
    for (const Point p : corners) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    cover(low, high, colour, [&](Point p) {
        double far = -1e9;
        for (std::size_t k = 0; k < corners.size(); ++k) {
            const Point a = corners[k], b = corners[(k + 1) % corners.size()];
            const double dx = b.x - a.x, dy = b.y - a.y;
            far = std::max(far, ((p.x - a.x) * dy - (p.y - a.y) * dx) / std::sqrt(dx * dx + dy * dy));
        }
        return far;
    });
}

} // namespace luft::sample
