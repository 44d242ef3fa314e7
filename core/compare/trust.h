// How far a stretch is to be trusted.
#pragma once

#include "compare/levels.h"

#include <vector>

namespace luft::compare {

/// Sets unlikeness, unevenness, met and confidence. The confidence is a logistic regression of the three,
/// fitted to alignments of 40 pieces (seeds 201 to 240 of tests/compare: other pieces, replaced sections,
/// missed notes, ornaments) and checked on 40 others.
void judge(Stretch& stretch, const Run& run, const Side& a, const Side& b);

/// Takes out stretches that are rather chance than counterpart: dynamic programming finds something alike in
/// any two songs. An unsure one between two sure ones that it meets stays, and so does one that a pin lies
/// in.
void leave_out_chance(std::vector<Stretch>& stretches, const std::vector<Pair>& pins);

} // namespace luft::compare
