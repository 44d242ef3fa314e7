// What a student takes home: the drills that the profile asks for, each with where to hear its example.
#pragma once

#include "profile/profile.h"

#include <string>

namespace luft::exports {

/// An HTML page to print, as `page`. For each drill of the profile: title, aim, steps in order, when to stop,
/// and the places in the recording that show what it is for. The cautions about health and the doctor stand
/// before the drills, not only at the foot.
std::string handout(const profile::Profile& profile);

} // namespace luft::exports
