#include "export/profile_map_ribbon.h"

#include "export/svg.h"
#include "profile/statistics.h"

#include <algorithm>
#include <cmath>

namespace luft::exports {
namespace {

constexpr std::int64_t kStep = 2;      ///< frames: 20 ms, enough to show a vibrato of 8 Hz
constexpr double kJump = 1.5;          ///< semitones in 20 ms: a new piece, not a steep ribbon
constexpr double kLeastDifference = 6; ///< dB

struct Point {
    double x, y, half;
};

double half_thickness(const Place& place, std::optional<Decibels> level) {
    const double range = std::max((place.loud - place.soft).value(), kLeastDifference);
    const double share = level ? std::clamp((*level - place.soft).value() / range, 0.0, 1.0) : 0.4;
    return (place.least + share * (place.most - place.least)) / 2;
}

std::string outline(const std::vector<Point>& points) {
    std::string path;
    const auto to = [&](double x, double y) {
        path += (path.empty() ? "M" : "L") + svg_number(x) + " " + svg_number(y);
    };
    for (const auto& p : points)
        to(p.x, p.y - p.half);
    for (auto p = points.rbegin(); p != points.rend(); ++p)
        to(p->x, p->y + p->half);
    return path + "Z";
}

/// The register of the note sung at a time.
std::optional<marks::Register> register_at(const MapLine& line, Seconds t) {
    for (const auto* n : line.notes)
        if (n->span.contains(t)) return n->sung_in;
    return std::nullopt;
}

std::vector<RibbonPiece> from_notes(const MapLine& line, const Place& place, double tuning) {
    std::vector<RibbonPiece> out;
    for (const auto* n : line.notes) {
        const double y = place.y(n->pitch.value() - tuning), half = half_thickness(place, n->level);
        out.push_back(
            {outline({{place.x(n->span.start), y, half}, {place.x(n->span.end), y, half}}), n->sung_in});
    }
    return out;
}

} // namespace

std::pair<Decibels, Decibels> level_range(const profile::Source& source) {
    std::vector<double> levels;
    for (const auto& mark : source.marks)
        if (const auto* n = std::get_if<marks::Note>(&mark.what)) levels.push_back(n->level.value());
    const double soft = profile::percentile(levels, 0.1).value_or(-40);
    const double loud = profile::percentile(levels, 0.95).value_or(-10);
    return {Decibels(soft - 3), Decibels(std::max(loud, soft + kLeastDifference))};
}

std::vector<RibbonPiece> ribbon(const profile::Source& source, const MapLine& line, const Place& place) {
    const double tuning = retuned(source);
    const auto& f0 = source.curves.f0;
    std::vector<RibbonPiece> out;
    std::vector<Point> points;
    std::optional<marks::Register> now;
    double before = 0;
    const auto finish = [&] {
        if (points.size() >= 2) out.push_back({outline(points), now});
        points.clear();
    };
    const auto first = nearest_frame(line.span.start).value, last = nearest_frame(line.span.end).value;
    for (auto f = first; f <= last; f += kStep) {
        const auto hertz = f0.at(FrameIndex{f});
        if (!hertz || hertz->value() <= 0) {
            finish();
            continue;
        }
        const double midi = pitch_of(*hertz).value() - tuning;
        // A stray octave of the pitch track is not part of the line.
        if (midi < line.low - 4 || midi > line.high + 4) {
            finish();
            continue;
        }
        const Seconds t = time_of({f});
        const auto told = register_at(line, t);
        const Point point{place.x(t), place.y(midi),
                          half_thickness(place, source.curves.level.at(FrameIndex{f}))};
        if (!points.empty() && std::abs(midi - before) > kJump) finish();
        if (!points.empty() && told && now && *told != *now) {
            points.push_back(point); // the pieces meet
            finish();
        }
        if (points.empty()) now = told;
        if (!now) now = told;
        points.push_back(point);
        before = midi;
    }
    finish();
    return out.empty() ? from_notes(line, place, tuning) : out;
}

} // namespace luft::exports
