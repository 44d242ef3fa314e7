// The style sheet of our HTML pages.
#pragma once

#include <string_view>

namespace luft::exports {

/// Rules for screen (light and dark) and for A4 paper. Holds neither '<' nor '&', so that a page stays
/// well-formed as XML too.
std::string_view page_style();

} // namespace luft::exports
