#include "export/tempo_curve.h"

#include "base/text.h"
#include "export/compare_words.h"
#include "export/page.h"
#include "export/svg.h"

namespace luft::exports {
namespace {

constexpr double kWidth = 1000, kHeight = 270, kWords = 15;

std::string path_of(const std::vector<TempoPlot::Point>& line) {
    std::string path;
    for (const auto& point : line)
        path += (path.empty() ? "M" : "L") + svg_number(point.x) + " " + svg_number(point.y);
    return path;
}

} // namespace

std::string tempo_curve(const compare::Comparison& c) {
    const TempoPlot plot = tempo_plot(c, kWidth, kHeight);
    if (plot.lines.empty()) return {};
    Svg svg(kWidth, kHeight, tempo_words(c));
    for (const auto& speed : plot.speeds) {
        svg.line(plot.left, speed.at, plot.right, speed.at, "stroke:var(--rule);stroke-width:1");
        svg.text(plot.left - 8, speed.at + 5, speed.words, kWords, "end", "fill:var(--soft)");
    }
    if (plot.even >= plot.top - 0.5 && plot.even <= plot.bottom + 0.5)
        svg.line(plot.left, plot.even, plot.right, plot.even,
                 "stroke:var(--soft);stroke-width:1.4;stroke-dasharray:6 4");
    for (const auto& phrase : plot.phrases)
        svg.rect(phrase.x, plot.bottom + 4, phrase.y - phrase.x, 5, "fill:var(--faint)");
    for (const auto& time : plot.times)
        svg.text(time.at, plot.bottom + 22, time.words, kWords, "middle", "fill:var(--soft)");
    for (const auto& line : plot.lines) {
        svg.path(path_of(line), "fill:none;stroke:var(--blue);stroke-width:3;stroke-linejoin:round");
        if (line.size() == 1) svg.circle(line[0].x, line[0].y, 3, "fill:var(--blue)");
    }
    svg.text(0, 13, speed_axis_words(c), kWords, "start", "fill:var(--soft)");
    svg.text(plot.right, kHeight - 3, time_axis_words(c), kWords, "end", "fill:var(--soft)");
    return "<figure>\n" + svg.str() + "\n" + element("figcaption", "", tempo_curve_words()) + "</figure>\n";
}

} // namespace luft::exports
