#include "export/inline_svg.h"

#include "export/page.h"

#include <array>

namespace luft::exports {
namespace {

/// A value of the first tag's attribute is taken out with it.
void drop_attribute(std::string& svg, const std::string& name) {
    const auto start = svg.find(" " + name + "=\"");
    if (start == std::string::npos || start > svg.find('>')) return;
    svg.erase(start, svg.find('"', start + name.size() + 3) + 1 - start);
}

} // namespace

std::string inline_svg(std::string_view document, std::string_view prefix, std::string_view label) {
    std::string svg(document.substr(std::min(document.find("<svg"), document.size())));
    while (svg.ends_with('\n'))
        svg.pop_back();
    // Cairo writes names only so, and none of this can stand in a value: no text of the coach is in it.
    constexpr std::array<std::string_view, 3> kNames = {" id=\"", "href=\"#", "url(#"};
    for (const std::string_view before : kNames)
        for (std::size_t at = 0; (at = svg.find(before, at)) != std::string::npos;) {
            at += before.size();
            svg.insert(at, prefix);
        }
    drop_attribute(svg, "width");
    drop_attribute(svg, "height");
    const std::string words = " role=\"img\" aria-label=\"" + safe(label) + "\"";
    if (const auto end = svg.find('>'); end != std::string::npos) svg.insert(end, words);
    return svg;
}

} // namespace luft::exports
