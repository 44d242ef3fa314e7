// When does a new detection mean the same thing as a mark that the coach has dealt with?
#pragma once

#include "project/mark_rows.h"

namespace luft::project {

/// Breaths whose middles, and switches whose times, lie this near are the same: two of them can't follow each
/// other so soon. The coach's hand is about that exact. Our choice, no source.
inline constexpr Seconds kNear{0.15};

/// Of spans that overlap, this share of the shorter one must be common to both. Our choice, no source.
inline constexpr double kCommonShare = 0.5;

/// True when `proposal` means the same as `stored`, which the coach kept, dropped, moved or added. Marks of
/// different kinds never do. A mark that was moved stands both for where it is and for where it was found.
///  - kept or coach's own: half of the shorter span is common, so that the two halves of a phrase that the
///    coach joined aren't proposed again, nor the whole of one that was split;
///  - dropped: half of the *whole* stretch of both is common, so that dropping a mark that is far too long
///    doesn't forbid better ones inside it;
///  - breaths and switches also when they lie near each other.
bool means_the_same(const Mark& proposal, const MarkRow& stored);

} // namespace luft::project
