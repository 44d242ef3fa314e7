#include "export/tempo_curve_print.h"

#include "export/tempo_curve.h"

namespace luft::exports {
namespace {

constexpr sheet::Type kSmall{8.5, false, false};

} // namespace

bool has_tempo_curve(const compare::Comparison& c) {
    return !tempo_plot(c, kTempoCurveHeight, kTempoCurveHeight).lines.empty();
}

void draw_tempo_curve(sheet::Canvas& canvas, const compare::Comparison& c, double width,
                      const sheet::Colours& colours) {
    const TempoPlot plot = tempo_plot(c, width, kTempoCurveHeight);
    if (plot.lines.empty()) return;
    for (const auto& speed : plot.speeds) {
        canvas.line(plot.left, speed.at, plot.right, speed.at, colours.rule, 0.6);
        canvas.text(plot.left - 6, speed.at + 3, speed.words, kSmall, colours.soft, sheet::Anchor::end);
    }
    if (plot.even >= plot.top - 0.5 && plot.even <= plot.bottom + 0.5)
        canvas.line(plot.left, plot.even, plot.right, plot.even, colours.soft, 0.9, sheet::Line::dashed);
    for (const auto& phrase : plot.phrases)
        canvas.box(phrase.x, plot.bottom + 2.5, phrase.y - phrase.x, 3.5, colours.faint);
    for (const auto& time : plot.times)
        canvas.text(time.at, plot.bottom + 15, time.words, kSmall, colours.soft, sheet::Anchor::middle);
    for (const auto& line : plot.lines) {
        sheet::Path path;
        path.move(line[0].x, line[0].y);
        for (std::size_t i = 1; i < line.size(); ++i)
            path.line(line[i].x, line[i].y);
        canvas.stroke(path, colours.chest, 1.8);
        if (line.size() == 1) canvas.box(line[0].x - 1.5, line[0].y - 1.5, 3, 3, colours.chest, 1.5);
    }
    canvas.text(0, 9, speed_axis_words(c), kSmall, colours.soft);
    canvas.text(plot.right, plot.height - 16, time_axis_words(c), kSmall, colours.soft, sheet::Anchor::end);
}

} // namespace luft::exports
