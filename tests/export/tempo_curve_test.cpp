// The tempo curve, measured on its drawing.
#include "export/compare_material.h"
#include "export/tempo_curve.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::exports;
using namespace luft::exports::testing;

namespace {

/// Percent at a height, read off the marks of the axis.
double percent_at(const TempoPlot& plot, double y) {
    REQUIRE(plot.speeds.size() > 1);
    const auto &low = plot.speeds.front(), &high = plot.speeds.back();
    const double from = std::stod(low.words), to = std::stod(high.words);
    return from + (to - from) * (y - low.at) / (high.at - low.at);
}

} // namespace

TEST_CASE("the tempo curve lies at the speeds that were put in, broken where only one plays on") {
    const TempoPlot plot = tempo_plot(comparison(), 800, 250);
    REQUIRE(plot.lines.size() == 2);
    for (const auto& point : plot.lines[0])
        CHECK(percent_at(plot, point.y) == Approx(125).margin(0.5));
    for (const auto& point : plot.lines[1])
        CHECK(percent_at(plot, point.y) == Approx(80).margin(0.5));
    CHECK(percent_at(plot, plot.even) == Approx(100).margin(0.5));
    // From 3 s to 17 s and from 33 s to 49 s: speeds are taken over 6 s.
    const double second = (plot.right - plot.left) / 52;
    CHECK(plot.lines[0].front().x == Approx(plot.left + 3 * second).margin(0.1));
    CHECK(plot.lines[1].front().x == Approx(plot.left + 33 * second).margin(0.1));
    REQUIRE(plot.times.size() > 4);
    CHECK(plot.times[0].words == "0:00");
    CHECK(plot.times[2].at - plot.times[0].at ==
          Approx((std::stod(plot.times[2].words.substr(2)) - 0) * second).margin(0.1));
    CHECK(plot.phrases.size() == 4);
    CHECK(plot.phrases[1].y - plot.phrases[1].x == Approx(7 * second).margin(0.1));
}

TEST_CASE(
    "everything of the tempo curve lies inside its field, at a steady speed and far from 100 percent, too") {
    for (const double speed : {0.4, 0.97, 1.0, 1.3, 2.5}) {
        auto c = comparison();
        c.alignment.only_a.clear();
        c.alignment.stretches.resize(1);
        c.alignment.stretches[0].knots = {{Seconds(0), Seconds(0)}, {Seconds(52), Seconds(52 / speed)}};
        const TempoPlot plot = tempo_plot(c, 800, 250);
        REQUIRE(plot.lines.size() == 1);
        for (const auto& point : plot.lines[0]) {
            CHECK(percent_at(plot, point.y) == Approx(100 * speed).margin(0.5));
            CHECK((point.y >= plot.top - 0.01 && point.y <= plot.bottom + 0.01));
        }
        for (const auto& tick : plot.speeds)
            CHECK((tick.at >= plot.top - 0.01 && tick.at <= plot.bottom + 0.01));
    }
}

TEST_CASE("where too little is shared there is no tempo curve") {
    auto c = comparison();
    c.alignment.stretches.resize(1);
    c.alignment.stretches[0].knots = {{Seconds(0), Seconds(0)}, {Seconds(7), Seconds(7)}};
    CHECK(tempo_curve(c).empty());
    CHECK(tempo_curve({}).empty());
    CHECK_FALSE(tempo_curve(comparison()).empty());
}
