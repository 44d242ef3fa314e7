#include "export/cue_strip.h"

#include "base/text.h"
#include "export/page.h"

#include <cmath>

namespace luft::exports {
namespace {

// Units of the drawing, which is scaled to the page's width.
constexpr double kWidth = 1000;
constexpr double kTop = 22;
constexpr double kHeight = 40;
constexpr double kRuler = 22;

const char* const kPatterns =
    "<defs><pattern id=\"talk\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\" "
    "patternTransform=\"rotate(45)\"><rect width=\"7\" height=\"7\" style=\"fill:var(--paper)\"/>"
    "<rect width=\"2.6\" height=\"7\" style=\"fill:var(--red)\"/></pattern>"
    "<pattern id=\"again\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\">"
    "<rect width=\"7\" height=\"7\" style=\"fill:var(--paper)\"/>"
    "<circle cx=\"3.5\" cy=\"3.5\" r=\"2\" style=\"fill:var(--blue)\"/></pattern>"
    "<pattern id=\"other\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\">"
    "<rect width=\"6\" height=\"6\" style=\"fill:var(--paper)\"/>"
    "<rect width=\"3\" height=\"6\" style=\"fill:var(--green)\"/></pattern></defs>\n";

std::string fill_of(script::SegmentKind kind) {
    switch (kind) {
    case script::SegmentKind::talk:
        return "fill=\"url(#talk)\"";
    case script::SegmentKind::quote:
        return "fill=\"url(#other)\"";
    case script::SegmentKind::replay:
        return "fill=\"url(#again)\"";
    case script::SegmentKind::play:
        break;
    }
    return "style=\"fill:var(--blue)\"";
}

std::string box(double x, double width, const std::string& fill) {
    return "<rect x=\"" + fixed(x, 2) + "\" y=\"" + fixed(kTop, 0) + "\" width=\"" + fixed(width, 2) +
           "\" height=\"" + fixed(kHeight, 0) + "\" " + fill + "/>\n";
}

std::string key_entry(const std::string& fill, const std::string& words) {
    return "<li><svg width=\"28\" height=\"14\" aria-hidden=\"true\"><rect x=\"0.5\" y=\"0.5\" width=\"27\" "
           "height=\"13\" " +
           fill + " class=\"frame\"/></svg> " + words + "</li>\n";
}

} // namespace

double ruler_step(double length) {
    for (const double step : {5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 300.0, 600.0})
        if (length / step <= 10) return step;
    return std::ceil(length / 10 / 600) * 600;
}

std::string ruler_words(double s) {
    const auto t = static_cast<long>(std::lround(s));
    const std::string rest = std::to_string(t % 60);
    return std::to_string(t / 60) + ":" + (rest.size() < 2 ? "0" : "") + rest;
}

std::string cue_strip(const script::CueSheet& sheet) {
    const double length = sheet.running_time.as_double();
    if (length <= 0) return {};
    const auto x = [&](Rational t) { return kWidth * t.as_double() / length; };
    std::string out = "<figure>\n<svg viewBox=\"-2 0 " + fixed(kWidth + 4, 0) + " " +
                      fixed(kTop + kHeight + kRuler, 0) +
                      "\" role=\"img\" aria-label=\"The programme from start to end\">\n" + kPatterns;
    bool replays = false;
    std::string numbers;
    for (const auto& s : sheet.segments) {
        const double from = x(s.programme_start);
        const double width = x(s.programme_end) - from;
        out += box(from, width, fill_of(s.kind));
        replays = replays || s.kind == script::SegmentKind::replay;
        if (s.kind != script::SegmentKind::talk || s.stop_number == 0) continue;
        const double middle = from + width / 2;
        numbers += "<circle cx=\"" + fixed(middle, 2) + "\" cy=\"" + fixed(kTop + kHeight / 2, 0) +
                   "\" r=\"12\" class=\"disc\"/><text x=\"" + fixed(middle, 2) + "\" y=\"" +
                   fixed(kTop + kHeight / 2 + 5, 0) + "\" class=\"number\">" + std::to_string(s.stop_number) +
                   "</text>\n";
    }
    out += "<rect x=\"0\" y=\"" + fixed(kTop, 0) + "\" width=\"" + fixed(kWidth, 0) + "\" height=\"" +
           fixed(kHeight, 0) + "\" class=\"frame\" fill=\"none\"/>\n" + numbers;
    for (const auto& a : sheet.asides) {
        const std::string at = fixed(x(a.programme_start), 2);
        out += "<path d=\"M" + at + " " + fixed(kTop, 0) + "v-18h12l-4 5 4 5h-12\" class=\"flag\"/>\n";
    }
    const double step = ruler_step(length);
    for (double t = 0; t <= length - step / 4; t += step) {
        const std::string at = fixed(kWidth * t / length, 2);
        out += "<path d=\"M" + at + " " + fixed(kTop + kHeight, 0) + "v5\" class=\"tick\"/><text x=\"" + at +
               "\" y=\"" + fixed(kTop + kHeight + 19, 0) + "\" class=\"ruler" + (t == 0 ? " first" : "") +
               "\">" + ruler_words(t) + "</text>\n";
    }
    out += "</svg>\n</figure>\n<ul class=\"key\">\n" +
           key_entry("style=\"fill:var(--blue)\"", "recording plays") +
           key_entry("fill=\"url(#talk)\"", "picture stands, you speak");
    if (replays) out += key_entry("fill=\"url(#again)\"", "heard again");
    if (!sheet.others.empty()) out += key_entry("fill=\"url(#other)\"", "another performance");
    if (!sheet.asides.empty())
        out +=
            "<li><svg width=\"18\" height=\"20\" aria-hidden=\"true\"><path d=\"M3 19v-16h12l-4 5 4 5h-12\" "
            "class=\"flag\"/></svg> spoken over the music</li>\n";
    return "<div class=\"strip keep\">\n" + out + "</ul>\n</div>\n";
}

} // namespace luft::exports
