// The sung range and its thirds.
#pragma once

#include "profile/material.h"

namespace luft::profile {

/// A range under three semitones isn't divided: its thirds would be smaller than a tone (no source).
inline constexpr double kLeastDivided = 3;

/// Lowest and highest note, the middle 80 % of the sung time (tessitura as teachers use the word: where the
/// part lies), and the bounds of three equal parts of the range. None without notes.
std::optional<SungRange> range_of(const std::vector<SungNote>& notes);

} // namespace luft::profile
