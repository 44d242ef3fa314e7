// A technique profile as JSON, for another program.
#pragma once

#include "profile/profile.h"

#include <string>

namespace luft::exports {

/// Schema "luftpause-profile/1" (docs/methods.md). Keys end in their unit; what can't be had is null.
/// Two-space indent, ends with a line end.
std::string profile_json(const profile::Profile& profile);

} // namespace luft::exports
