// A technique profile as plain text, for a terminal or an e-mail.
#pragma once

#include "profile/profile.h"

#include <string>

namespace luft::exports {

/// UTF-8, lines of at most 78 columns where words allow it, ends with a line end.
std::string profile_text(const profile::Profile& profile);

} // namespace luft::exports
