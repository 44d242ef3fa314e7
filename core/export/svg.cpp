#include "export/svg.h"

#include "base/text.h"
#include "export/page.h"

namespace luft::exports {
namespace {

std::string attribute(std::string_view name, double v) {
    return " " + std::string(name) + "=\"" + svg_number(v) + "\"";
}
std::string styled(std::string_view style) {
    return style.empty() ? std::string() : " style=\"" + std::string(style) + "\"";
}

} // namespace

std::string svg_number(double v) {
    std::string text = fixed(v, 1);
    if (text.ends_with(".0")) text.resize(text.size() - 2);
    return text;
}

Svg::Svg(double width, double height, std::string_view label)
    : open_("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + svg_number(width) + " " +
            svg_number(height) + "\"" + attribute("width", width) + attribute("height", height) +
            " role=\"img\" aria-label=\"" + safe(label) + "\">") {}

void Svg::define(std::string_view markup) {
    body_ += "<defs>" + std::string(markup) + "</defs>";
}

void Svg::line(double x1, double y1, double x2, double y2, std::string_view style) {
    body_ += "<line" + attribute("x1", x1) + attribute("y1", y1) + attribute("x2", x2) + attribute("y2", y2) +
             styled(style) + " />";
}

void Svg::rect(double x, double y, double width, double height, std::string_view style) {
    body_ += "<rect" + attribute("x", x) + attribute("y", y) + attribute("width", width) +
             attribute("height", height) + styled(style) + " />";
}

void Svg::circle(double x, double y, double radius, std::string_view style) {
    body_ +=
        "<circle" + attribute("cx", x) + attribute("cy", y) + attribute("r", radius) + styled(style) + " />";
}

void Svg::path(std::string_view data, std::string_view style) {
    body_ += "<path d=\"" + std::string(data) + "\"" + styled(style) + " />";
}

void Svg::text(double x, double y, std::string_view words, double size, std::string_view anchor,
               std::string_view style) {
    body_ += "<text" + attribute("x", x) + attribute("y", y) + attribute("font-size", size) +
             " text-anchor=\"" + std::string(anchor) + "\"" + styled(style) + ">" + safe(words) + "</text>";
}

std::string Svg::str() const {
    return open_ + body_ + "</svg>";
}

} // namespace luft::exports
