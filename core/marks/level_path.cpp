#include "marks/level_path.h"

#include "signal/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::marks {
namespace {

constexpr Seconds kPiece{0.12};
constexpr double kEdge = 0.15;
constexpr Seconds kLeastEdge{0.03};
constexpr double kReach = 0.3;

double cube(double x) {
    return x * x * x;
}

/// The weighted line through the points around `t`, at `t`.
double local_line(const std::vector<LevelPoint>& points, const std::vector<double>& trust, double t,
                  double reach) {
    double w = 0, wx = 0, wy = 0, wxx = 0, wxy = 0;
    for (const LevelPoint& p : points) {
        const double x = p.at.value() - t;
        const double far = std::abs(x) / reach;
        if (far >= 1) continue;
        const double k = cube(1 - cube(far)) * p.weight * trust[p.note];
        w += k, wx += k * x, wy += k * p.level, wxx += k * x * x, wxy += k * x * p.level;
    }
    const double det = w * wxx - wx * wx;
    if (w <= 0) return Curve<Decibels>::kNone;
    return det > 1e-9 * w * w ? (wxx * wy - wx * wxy) / det : wy / w;
}

std::vector<double> off_path(const std::vector<LevelPoint>& points, const SmoothPath& path) {
    std::vector<double> sum(points.back().note + 1), weight(sum.size());
    for (const LevelPoint& p : points) {
        sum[p.note] += p.weight * (p.level - path.at(p.at));
        weight[p.note] += p.weight;
    }
    for (std::size_t i = 0; i < sum.size(); ++i)
        sum[i] = weight[i] > 0 ? std::abs(sum[i] / weight[i]) : std::nan("");
    return sum;
}

/// To either side; far enough that neighbours are reached from any point.
double reach_of(const std::vector<LevelPoint>& points, double length) {
    std::size_t notes = 1;
    for (std::size_t i = 1; i < points.size(); ++i)
        notes += points[i].note != points[i - 1].note ? 1 : 0;
    return std::max(kReach * length, 1.5 * length / static_cast<double>(notes));
}

} // namespace

std::vector<LevelPoint> level_points(const Curve<Decibels>& level, std::span<const Note> notes) {
    std::vector<LevelPoint> out;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        const Span whole = notes[i].span;
        const Seconds edge = std::min(std::max(whole.length() * kEdge, kLeastEdge), whole.length() * 0.4);
        const Span steady{whole.start + edge, whole.end - edge};
        const int pieces = std::max(1, static_cast<int>(std::lround(steady.length() / kPiece)));
        for (int k = 0; k < pieces; ++k) {
            const Span piece{steady.start + steady.length() * (double(k) / pieces),
                             steady.start + steady.length() * (double(k + 1) / pieces)};
            if (const auto middle = signal::median(level.within(piece)))
                out.push_back({piece.middle(), *middle, piece.length().value(), i});
        }
    }
    return out;
}

double SmoothPath::at(Seconds t) const {
    const double x =
        std::clamp((t - span.start) / span.length(), 0.0, 1.0) * static_cast<double>(level.size() - 1);
    const auto i = std::min(static_cast<std::size_t>(x), level.size() - 2);
    const double part = x - static_cast<double>(i);
    return level[i] + part * (level[i + 1] - level[i]);
}

SmoothPath smooth_path(const std::vector<LevelPoint>& points) {
    SmoothPath path;
    path.span = {points.front().at, points.back().at};
    path.level.resize(kPathSteps);
    const double length = path.span.length().value();
    const double reach = reach_of(points, length);
    std::vector<double> trust(points.back().note + 1, 1.0);
    constexpr int kRounds = 3;
    for (int round = 0; round < kRounds; ++round) {
        for (std::size_t k = 0; k < kPathSteps; ++k)
            path.level[k] = local_line(
                points, trust, path.span.start.value() + length * double(k) / (kPathSteps - 1), reach);
        const std::vector<double> off = off_path(points, path);
        const double middle = signal::median(off).value_or(0);
        path.scatter = 1.4826 * middle;
        const double limit = std::max(6 * middle, 3.0);
        for (std::size_t i = 0; i < off.size(); ++i) {
            const double u = std::isnan(off[i]) ? 0 : off[i] / limit;
            trust[i] = u < 1 ? (1 - u * u) * (1 - u * u) : 0.01;
        }
    }
    return path;
}

} // namespace luft::marks
