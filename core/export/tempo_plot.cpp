#include "base/text.h"
#include "export/cue_strip.h"
#include "export/plain_text.h"
#include "export/tempo_curve.h"

#include <algorithm>
#include <cmath>
#include <ranges>

namespace luft::exports {
namespace {

constexpr double kSpeedRoom = 52, kTimeRoom = 48, kHeadRoom = 28; // for the axes' words
constexpr double kEvenWithin = 0.25; ///< the same speed is drawn when the curve comes as near as that
constexpr Seconds kGap{3};           // points stand 2 s apart where both sing on

double speed_step(double range) {
    for (const double step : {0.02, 0.05, 0.1, 0.2, 0.5})
        if (range / step <= 5) return step;
    return 1;
}

} // namespace

TempoPlot tempo_plot(const compare::Comparison& c, double width, double height) {
    TempoPlot plot;
    plot.width = width, plot.height = height;
    plot.left = kSpeedRoom, plot.right = width - 8, plot.top = kHeadRoom, plot.bottom = height - kTimeRoom;
    const auto points = compare::tempo_curve(c.alignment);
    if (points.size() < 2) return plot;

    const double length = std::max(c.side_a.duration, points.back().a).value();
    const auto x = [&](Seconds t) { return plot.left + (plot.right - plot.left) * t.value() / length; };
    auto [least, most] =
        std::ranges::minmax(points | std::views::transform([](const auto& p) { return p.speed; }));
    if (least > 1 && least <= 1 + kEvenWithin) least = 1;
    if (most < 1 && most >= 1 - kEvenWithin) most = 1;
    const double step = speed_step(std::max(most - least, 0.08));
    least = std::floor(least / step + 0.01) * step;
    most = std::max(std::ceil(most / step - 0.01) * step, least + 2 * step);
    const auto y = [&](double speed) {
        return plot.bottom - (plot.bottom - plot.top) * (speed - least) / (most - least);
    };
    plot.even = y(1);
    for (double speed = least; speed < most + step / 2; speed += step)
        plot.speeds.push_back({y(speed), fixed(100 * speed, 0) + " %"});
    const double apart = ruler_step(length);
    for (double t = 0; t < length; t += apart)
        plot.times.push_back({x(Seconds(t)), ruler_words(t)});

    for (std::size_t i = 0; i < points.size(); ++i) {
        if (i == 0 || points[i].a - points[i - 1].a > kGap) plot.lines.emplace_back();
        plot.lines.back().push_back({x(points[i].a), y(points[i].speed)});
    }
    for (const marks::Phrase& phrase : c.side_a.phrases)
        plot.phrases.push_back({x(phrase.span.start), x(phrase.span.end)});
    return plot;
}

std::string time_axis_words(const compare::Comparison& c) {
    return "time in " + one_line(c.a.label) + " (grey bars: its phrases)";
}

std::string speed_axis_words(const compare::Comparison& c) {
    return "speed of " + one_line(c.b.label) + ", where " + one_line(c.a.label) + " is 100 %";
}

std::string tempo_curve_words() {
    return "Each point is the speed over the 6 s around it. Where the line stops, the two have nothing in "
           "common. Dashed: the same speed.";
}

} // namespace luft::exports
