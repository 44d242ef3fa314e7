// A drawing of ours inside an HTML page.
#pragma once

#include <string>
#include <string_view>

namespace luft::exports {

/// What Canvas::take_svg gives, as an element to stand among others: without the XML declaration and without
/// a size of its own, every name in it (letters, patterns) beginning with `prefix`, so that two drawings on
/// one page never use each other's. `label` says what it shows to those who can't see it; escaped here.
std::string inline_svg(std::string_view document, std::string_view prefix, std::string_view label);

} // namespace luft::exports
