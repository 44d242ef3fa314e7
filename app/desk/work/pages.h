// Pages of the window that are text with links: the profile and the key chart.
#pragma once

#include "profile/profile.h"
#include "sheet/colours.h"

#include <optional>
#include <string>
#include <string_view>

namespace luft::desk {

/// The profile as simple HTML (3.2, as the window library shows it), its examples linked as "span:FROM-TO" in
/// seconds. Escaped.
std::string profile_page(const profile::Profile& profile, const sheet::Colours& colours);

/// The span that a link of the page names; none for other links.
std::optional<Span> linked_span(std::string_view link);

/// "#rrggbb".
std::string hex(sheet::Colour colour);

} // namespace luft::desk
