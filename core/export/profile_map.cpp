#include "export/profile_map.h"

#include "base/text.h"
#include "export/page.h"
#include "export/profile_map_ribbon.h"
#include "export/svg.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace luft::exports {
namespace {

// Sizes in units of the picture, which is 720 wide: about a quarter of a millimetre each on A4.
constexpr double kWidth = 720;
constexpr double kGutter = 34; ///< note names
constexpr double kColumnGap = 22;
constexpr double kRight = 14; ///< room for a breath after the longest line
constexpr double kAbove = 21; ///< time, breaths and switches
constexpr double kBelow = 9;
constexpr double kSemitone = 4.8;
constexpr double kLeastSemitones = 6;
constexpr double kSmall = 9.5;         ///< type
constexpr std::size_t kOneColumn = 14; ///< up to so many lines each has the whole width
constexpr double kSheet = 900;         ///< height that prints on one A4 page with heading and legend
constexpr int kMostSheets = 2;
const std::string kInk = "fill:var(--ink)";

/// The comma of a breath mark, its head at (x, y).
std::string comma(double x, double y) {
    return "M" + svg_number(x - 1) + " " + svg_number(y + 2.6) +
           "a2.8 2.8 0 1 1 3.7 -1.8q0.2 4.2 -4.6 6.2q2.2 -2 0.9 -4.4z";
}

std::string breath_style(marks::BreathEvidence kind) {
    return kind == marks::BreathEvidence::heard ? kInk : "fill:var(--paper);stroke:var(--ink);stroke-width:1";
}

std::string arrow(double x, double y, bool up) {
    const double d = up ? -6 : 6;
    return "M" + svg_number(x - 4) + " " + svg_number(y) + "h8l-4 " + svg_number(d) + "z";
}

std::string piece_style(std::optional<marks::Register> sung_in) {
    if (!sung_in) return "fill:var(--soft)";
    return *sung_in == marks::Register::head ? "fill:url(#head);stroke:var(--orange);stroke-width:0.7"
                                             : "fill:var(--blue)";
}

constexpr std::string_view kHeadPattern =
    "<pattern id=\"head\" width=\"4\" height=\"8\" patternUnits=\"userSpaceOnUse\">"
    "<rect width=\"4\" height=\"8\" style=\"fill:var(--paper)\" />"
    "<rect width=\"2.2\" height=\"8\" style=\"fill:var(--orange)\" /></pattern>";

double height_of(const MapLine& line) {
    return kAbove + kBelow + std::max(kLeastSemitones, line.high - line.low + 2) * kSemitone;
}

struct Column {
    double left = 0, width = 0;
};

/// Faint rules at C, E and G, named at the left.
void draw_rules(Svg& svg, const Column& column, double top, double bottom, double low, double high,
                const std::function<double(double)>& y) {
    for (int midi = static_cast<int>(std::ceil(low)); midi <= high; ++midi) {
        const int step = ((midi % 12) + 12) % 12;
        if (step != 0 && step != 4 && step != 7) continue;
        const double at = y(midi);
        if (at < top + 2 || at > bottom - 1) continue;
        svg.line(column.left + kGutter, at, column.left + column.width, at,
                 "stroke:var(--rule);stroke-width:0.7");
        svg.text(column.left + kGutter - 5, at + 3.2, note_name(MidiPitch(midi)), kSmall, "end",
                 "fill:var(--faint)");
    }
}

void draw_line(Svg& svg, const profile::Source& source, const MapLine& line, const Column& column, double top,
               double per_second, sheet::LevelRange levels) {
    const double semitones = std::max(kLeastSemitones, line.high - line.low + 2);
    const double middle = (line.low + line.high) / 2;
    const double high = middle + semitones / 2, low = middle - semitones / 2;
    const double staff = top + kAbove, bottom = staff + semitones * kSemitone;
    Place place;
    place.x = [&](Seconds t) { return column.left + kGutter + (t - line.span.start).value() * per_second; };
    place.y = [&](double midi) { return staff + (high - midi) * kSemitone; };
    draw_rules(svg, column, staff, bottom, low, high, place.y);
    svg.text(column.left + kGutter, top + 11, clock_text(line.span.start), kSmall + 1, "start",
             "fill:var(--soft)");

    for (const auto* b : line.breaths)
        if (b->inside_phrase && line.span.contains(b->span.start)) {
            const double x = place.x(b->span.middle());
            svg.line(x, staff - 5, x, bottom, "stroke:var(--ink);stroke-width:0.8;stroke-dasharray:2 2");
        }
    for (const auto& piece : ribbon_paths(source, line, place, levels))
        svg.path(piece.path, piece_style(piece.sung_in));
    const double end = column.left + column.width;
    const double before = column.left + kGutter - 7; // left of the time, for the song's first breath
    for (const auto* b : line.breaths)
        svg.path(comma(std::clamp(place.x(b->span.middle()), before, end - 6), staff - 11),
                 breath_style(b->evidence_kind));
    for (const auto* s : line.switches) {
        const bool up = s->to == marks::Register::head;
        svg.path(arrow(place.x(s->time), staff - (up ? 3 : 9), up), "fill:var(--red)");
    }
    if (line.goes_on) svg.text(end - 2, bottom - 2, "…", kSmall + 2, "end", "fill:var(--soft)");
}

struct Layout {
    int columns = 1;
    Seconds longest{4}; ///< at least, so that a few short lines don't look endless
    sheet::LevelRange levels;
};

/// How many of the lines fit one sheet; at least one.
std::size_t fitting(std::span<const MapLine> lines, int columns) {
    double all = 0;
    std::size_t n = 0;
    while (n < lines.size() && (n == 0 || all + height_of(lines[n]) <= kSheet * columns))
        all += height_of(lines[n++]);
    return n;
}

/// Lines go down the first column, then down the second; both end at about the same height.
std::string draw_sheet(const profile::Source& source, std::span<const MapLine> lines, const Layout& layout,
                       bool first) {
    const double width = (kWidth - (layout.columns - 1) * kColumnGap) / layout.columns;
    double all = 0;
    for (const auto& line : lines)
        all += height_of(line);
    std::array<double, 2> y{};
    std::vector<std::size_t> column_of;
    std::vector<double> tops;
    std::size_t column = 0;
    for (const auto& line : lines) {
        column_of.push_back(column);
        tops.push_back(y[column]);
        y[column] += height_of(line);
        if (column + 1 < static_cast<std::size_t>(layout.columns) && y[column] >= all / layout.columns)
            ++column;
    }
    Svg svg(kWidth, std::ceil(std::max(y[0], y[1]) + 2), "The sung pitch of every phrase over time");
    if (first) svg.define(kHeadPattern);
    const double per_second = (width - kGutter - kRight) / layout.longest.value();
    for (std::size_t i = 0; i < lines.size(); ++i)
        draw_line(svg, source, lines[i], {static_cast<double>(column_of[i]) * (width + kColumnGap), width},
                  tops[i], per_second, layout.levels);
    return svg.str();
}

std::string legend() {
    const auto entry = [](const Svg& picture, const char* words) {
        return "<li>" + picture.str() + "<span>" + words + "</span></li>\n";
    };
    const auto bar = [](const char* style) {
        Svg svg(30, 12, "");
        svg.path("M1 6.5L29 2.5L29 9.5L1 7.5Z", style);
        return svg;
    };
    const auto mark = [](const std::string& path, const std::string& style) {
        Svg svg(14, 16, "");
        svg.path(path, style);
        return svg;
    };
    return "<ul class=\"key\">\n" +
           entry(bar("fill:var(--blue)"), "likely chest register; thicker is louder") +
           entry(bar("fill:url(#head);stroke:var(--orange);stroke-width:0.7"), "likely head register") +
           entry(bar("fill:var(--soft)"), "register not told") +
           entry(mark(comma(7, 5), kInk), "breath, heard") +
           entry(mark(comma(7, 5), "fill:var(--paper);stroke:var(--ink);stroke-width:1"),
                 "breath, inferred from a gap") +
           entry(mark("M7 0V16", "stroke:var(--ink);stroke-width:0.9;stroke-dasharray:2 2"),
                 "breath while the line goes on") +
           entry(mark(arrow(7, 10, true), "fill:var(--red)"), "switch up to head") +
           entry(mark(arrow(7, 5, false), "fill:var(--red)"), "down to chest") + "</ul>\n";
}

} // namespace

PhraseMap phrase_map(const profile::Source& source) {
    const auto lines = map_lines(source);
    PhraseMap map;
    if (lines.empty()) return map;
    Layout layout;
    layout.columns = lines.size() > kOneColumn ? 2 : 1;
    for (const auto& line : lines)
        layout.longest = std::max(layout.longest, line.span.length());
    layout.levels = sheet::level_range(source);

    map.html = "<figure class=\"wide\">\n";
    std::size_t shown = 0;
    for (int sheet = 0; sheet < kMostSheets && shown < lines.size(); ++sheet) {
        const auto rest = std::span(lines).subspan(shown);
        const auto count = fitting(rest, layout.columns);
        map.html += draw_sheet(source, rest.first(count), layout, sheet == 0) + "\n";
        shown += count;
    }
    map.shown = static_cast<int>(shown);
    map.left_out = static_cast<int>(lines.size() - shown);
    map.html += "<figcaption>" + legend() + "All lines on one time scale, " +
                fixed(layout.longest.value(), 1) + " s across" +
                (layout.columns == 2 ? "; first column first" : "") + ". Rests between lines are not drawn." +
                (map.left_out > 0 ? " The last " + std::to_string(map.left_out) +
                                        " lines are left out to keep this to two pages."
                                  : "") +
                "</figcaption>\n</figure>\n";
    return map;
}

} // namespace luft::exports
