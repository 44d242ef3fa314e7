// How far the pitch swings in part of a note.
#pragma once

#include "base/curve.h"

namespace luft::profile {

/// True when the pitch of a note swings clearly less in its first 40 % than in its last 40 %: a vibrato that
/// comes in late. Swing = spread (10th to 90th percentile) about a straight line through that part. False
/// where the curve has too little there (12 frames in either part).
bool starts_straight(const Curve<Hertz>& f0, Span note);

} // namespace luft::profile
