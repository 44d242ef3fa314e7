// What a student takes home: the drills that the profile asks for, each with where to hear its example.
#pragma once

#include "profile/profile.h"

#include <string>

namespace luft::exports {

/// An HTML page to print, as `page`. For each drill of the profile: title, aim, steps in order, when to stop,
/// the places in the recording that show what it is for, and the sheet's own picture of the phrases they lie
/// in. The cautions about health and the doctor stand before the drills, not only at the foot. `source` is
/// what the profile was made from.
std::string handout(const profile::Profile& profile, const profile::Source& source);

/// Units of the sheet across the handout: signs and words are as large as on the printed sheet.
inline constexpr double kHandoutWidth = 780;

} // namespace luft::exports
