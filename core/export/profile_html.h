// A technique profile as one page for screen and music stand.
#pragma once

#include "profile/profile.h"

#include <string>

namespace luft::exports {

/// Self-contained page (see page.h). `source` is what the profile was made from: its curves and marks draw
/// the song at a glance.
std::string profile_html(const profile::Profile& profile, const profile::Source& source);

} // namespace luft::exports
