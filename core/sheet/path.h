// An outline, before it is drawn.
#pragma once

#include <array>
#include <vector>

namespace luft::sheet {

struct Point {
    double x = 0, y = 0;
};

struct Path {
    enum class Step { move, line, curve, close };
    struct Part {
        Step step = Step::move;
        std::array<Point, 3> points; ///< one for move and line, two handles and an end for a curve
    };
    std::vector<Part> parts;

    Path& move(double x, double y) { return add(Step::move, {{{x, y}, {}, {}}}); }
    Path& line(double x, double y) { return add(Step::line, {{{x, y}, {}, {}}}); }
    Path& curve(Point first, Point second, Point end) { return add(Step::curve, {{first, second, end}}); }
    Path& close() { return add(Step::close, {}); }
    [[nodiscard]] bool empty() const { return parts.empty(); }

  private:
    Path& add(Step step, const std::array<Point, 3>& points) {
        parts.push_back({step, points});
        return *this;
    }
};

} // namespace luft::sheet
