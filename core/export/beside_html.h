// Profiles side by side as one page for screen and paper.
#pragma once

#include "profile/beside.h"

#include <string>

namespace luft::exports {

/// Self-contained page (see page.h): what stands out in each performance, then a row for each figure and a
/// column for each performance.
std::string beside_html(const profile::Beside& beside);

} // namespace luft::exports
