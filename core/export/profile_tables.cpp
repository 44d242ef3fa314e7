#include "export/profile_tables.h"

#include "base/text.h"
#include "export/page.h"
#include "export/svg.h"
#include "profile/words.h"

#include <algorithm>
#include <cmath>

namespace luft::exports {
namespace {

constexpr double kPicture = 190; ///< units
constexpr double kBar = 138;     ///< of a share of 100 %

std::string head(const char* first, const char* picture, bool divided) {
    std::string out =
        "<thead><tr><th class=\"what\">" + std::string(first) + "</th><th class=\"pic\">" + picture + "</th>";
    if (divided) out += "<th class=\"cell\">low</th><th class=\"cell\">mid</th><th class=\"cell\">high</th>";
    for (int q = 1; q <= 4; ++q)
        out += "<th class=\"cell" + std::string(q == 1 && divided ? " apart" : "") + "\">Q" +
               std::to_string(q) + "</th>";
    return out + "</tr></thead>\n";
}

/// A count, tinted by its share of the row's largest. The number stands there too.
std::string count_cell(int count, int most, bool apart) {
    const double tint = most > 0 ? 0.32 * count / most : 0;
    return std::string("<td class=\"cell") + (apart ? " apart" : "") +
           "\"><span style=\"background:rgba(0,114,178," + fixed(tint, 2) + ")\">" +
           (count == 0 ? "\xC2\xB7" : std::to_string(count)) + "</span></td>";
}

std::string value_cell(const profile::Measure& m, const std::optional<double>& v, bool apart) {
    return std::string("<td class=\"cell") + (apart ? " apart" : "") + "\"><span>" +
           (v ? profile::figure_text(m, *v) : "\xC2\xB7") + "</span></td>";
}

std::string bar(const profile::ShadeShare& s) {
    Svg svg(kPicture, 18, profile::percent(s.share) + " " + s.of);
    svg.rect(0, 4, kBar, 10, "fill:none;stroke:var(--rule);stroke-width:0.8");
    const double width = s.share > 0 ? std::max(1.5, s.share * kBar) : 0;
    svg.rect(0, 4, width, 10, "fill:var(--blue)");
    svg.text(kBar + 6, 13.5, profile::percent(s.share), 12.5);
    return svg.str();
}

/// A line from the 10th to the 90th percentile with a dot at the median, the figures at its ends.
std::string spread(const profile::Measure& m) {
    Svg svg(kPicture, 30,
            profile::figure_text(m, m.median) + ", from " + profile::figure_text(m, m.low) + " to " +
                profile::figure_text(m, m.high));
    const double left = 14, right = kPicture - 14;
    const double width = m.high - m.low;
    const auto x = [&](double v) {
        return width > 0 ? left + (v - m.low) / width * (right - left) : (left + right) / 2;
    };
    if (width > 0) svg.line(left, 19, right, 19, "stroke:var(--blue);stroke-width:2.5");
    if (width > 0)
        for (const double end : {left, right})
            svg.line(end, 14, end, 24, "stroke:var(--blue);stroke-width:1.5");
    if (m.low < 0 && m.high > 0)
        svg.line(x(0), 12, x(0), 26, "stroke:var(--faint);stroke-width:1;stroke-dasharray:2 2");
    svg.circle(x(m.median), 19, 4.5, "fill:var(--paper);stroke:var(--blue);stroke-width:2.2");
    const std::string low = profile::figure_text(m, m.low), high = profile::figure_text(m, m.high);
    if (width > 0) {
        svg.text(left - 12, 10, low, 11, "start", "fill:var(--soft)");
        svg.text(right + 12, 10, high, 11, "end", "fill:var(--soft)");
    }
    return svg.str();
}

} // namespace

std::string shade_table(const profile::FacetProfile& facet, bool divided) {
    std::string out;
    std::string axis;
    for (const auto& s : facet.shades) {
        if (out.empty() || s.axis != axis) {
            if (!out.empty()) out += "</tbody></table>\n";
            axis = s.axis;
            out += "<table class=\"figures keep\">" +
                   head(safe(profile::capital(axis)).c_str(), safe(s.of).c_str(), divided) + "<tbody>\n";
        }
        out += "<tr><td class=\"what\">" + safe(s.name) + " <span class=\"quiet\">" +
               std::to_string(s.count) +
               (s.by_coach > 0 ? ", by the coach " + std::to_string(s.by_coach) : "") +
               "</span></td><td class=\"pic\">" + bar(s) + "</td>";
        if (divided)
            for (const int n : s.by_range)
                out += count_cell(n, *std::ranges::max_element(s.by_range), false);
        for (std::size_t q = 0; q < 4; ++q)
            out += count_cell(s.by_quarter[q], *std::ranges::max_element(s.by_quarter), q == 0 && divided);
        out += "</tr>\n";
    }
    return out.empty() ? out : out + "</tbody></table>\n";
}

std::string measure_table(const profile::FacetProfile& facet, bool divided) {
    if (facet.measures.empty()) return {};
    std::string out =
        "<table class=\"figures\">" + head("Measured", "median, middle 80 %", divided) + "<tbody>\n";
    for (const auto& m : facet.measures) {
        out += "<tr><td class=\"what\">" + safe(m.name) + " <b class=\"time\">" +
               profile::figure_text(m, m.median) +
               (m.unit.empty() || m.unit == "MIDI" ? "" : " " + safe(m.unit)) +
               "</b> <span class=\"quiet\">of " + std::to_string(m.count) + "</span></td><td class=\"pic\">" +
               spread(m) + "</td>";
        if (divided)
            for (const auto& v : m.by_range)
                out += value_cell(m, v, false);
        for (std::size_t q = 0; q < 4; ++q)
            out += value_cell(m, m.by_quarter[q], q == 0 && divided);
        out += "</tr>\n";
    }
    out += "</tbody></table>\n<p class=\"quiet notes\">";
    for (const auto& m : facet.measures)
        if (!m.note.empty()) out += "<b>" + safe(m.name) + "</b> " + safe(m.note) + " ";
    return out + "</p>\n";
}

std::string_view table_style() {
    return R"css(
.figures { table-layout: fixed; margin: 0.5rem 0 0.7rem; font-size: 0.88rem; }
.figures th { font-size: 0.8rem; font-weight: 400; padding-bottom: 0.1rem; vertical-align: bottom; }
.figures td { vertical-align: middle; padding-top: 0.18rem; padding-bottom: 0.18rem; }
.figures tr:last-child td { border-bottom: none; }
.figures .what { width: 33%; }
.figures .pic { width: 26%; }
.figures .pic svg { display: block; width: 100%; height: auto; }
.figures .cell { text-align: center; padding-left: 0; padding-right: 0; }
.figures .cell.apart { border-left: 2px solid var(--paper); }
.figures td.cell span { display: block; margin: 0 0.12rem; padding: 0.08rem 0; border-radius: 0.15rem;
  font-variant-numeric: lining-nums tabular-nums; }
.notes { break-inside: avoid; }
.notes b { font-weight: 600; }
)css";
}

} // namespace luft::exports
