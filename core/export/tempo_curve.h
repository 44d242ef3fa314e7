// How fast one performance runs against the other, along the song.
#pragma once

#include "compare/comparison.h"

#include <string>
#include <vector>

namespace luft::exports {

/// The drawing, measured: lengths in its own units, from its top left corner.
struct TempoPlot {
    struct Tick {
        double at = 0;
        std::string words;
    };
    struct Point {
        double x = 0, y = 0;
    };
    double width = 0, height = 0;
    double left = 0, right = 0, top = 0, bottom = 0; ///< of the field between the axes
    std::vector<Tick> times;                         ///< across, A's time: "0:30"
    std::vector<Tick> speeds;                        ///< up, B's speed where A's is 100 %: "110 %"
    double even = 0;                                 ///< height of the same speed; outside the field when far
    std::vector<std::vector<Point>> lines;           ///< one for each stretch that both have
    std::vector<Point> phrases;                      ///< of A: from x to y, both across
};

/// Without lines when they have too little in common for a curve (two points, 2 s apart).
TempoPlot tempo_plot(const compare::Comparison& comparison, double width, double height);

/// The words beside the axes.
std::string time_axis_words(const compare::Comparison& comparison);
std::string speed_axis_words(const compare::Comparison& comparison);
/// How the drawing is to be read.
std::string tempo_curve_words();

/// An inline SVG with its caption; empty when there is nothing to draw.
std::string tempo_curve(const compare::Comparison& comparison);

} // namespace luft::exports
