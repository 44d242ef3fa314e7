// What the handout's page and its PDF share: its words, and where to hear what a drill is for.
#pragma once

#include "profile/profile.h"

#include <string>
#include <string_view>
#include <vector>

namespace luft::exports {

/// Said to students before any drill: at ease, when to stop, when to see a doctor.
std::string_view handout_lead();

/// Source and length of the recording, as far as they are known.
std::vector<std::string> handout_facts(const profile::Profile& profile);

/// Examples of the findings that ask for this drill, in the profile's order; a few at most.
std::vector<profile::Example> drill_places(const profile::Profile& profile, const std::string& drill);

/// "0:12.3 to 0:14.0".
std::string place_time(const profile::Example& place);

} // namespace luft::exports
