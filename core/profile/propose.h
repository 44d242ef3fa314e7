// Moments that the marks themselves suggest, each with its evidence, for the coach to keep or drop.
#pragma once

#include "profile/profile.h"

#include <vector>

namespace luft::profile {

/// The most telling places, spread over the song and over the facets: state proposed, origin detected, shades
/// and verdict set, evidence in words, remark left empty. At most `most`, in order of time. Deterministic.
std::vector<project::Moment> propose_moments(const Source& source, int most = 12);

} // namespace luft::profile
