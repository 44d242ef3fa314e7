// The few sentences that open a profile.
#pragma once

#include "profile/material.h"

#include <string>
#include <vector>

namespace luft::profile {

/// Who sings how much of what, in which range, and what stands out; `profile` has its lists already.
std::vector<std::string> headline(const Material& m, const Profile& profile);

} // namespace luft::profile
