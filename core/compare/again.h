// Stretches that have no counterpart because they are sung once more.
#pragma once

#include "compare/levels.h"

namespace luft::compare {

/// Sets Alone::again on stretches of 4 s and more: each is aligned by itself against the whole of the other
/// side (subsequence alignment, Müller 2015, section 7.2.3), and half of it or more has to be found there.
/// `key` as likeliest_key has it.
void find_again(Alignment& alignment, const Side& a, const Side& b, int key, const Progress& progress);

/// Of a part that is sung twice, any bit of the second time can stand for the same bit of the first, and what
/// is left out may begin anywhere in it. The borders that make the first time whole: each a pair at which the
/// gap has to begin.
std::vector<Pair> first_time_whole(const Alignment& alignment, const Side& a, const Side& b, int key,
                                   const Progress& progress);

} // namespace luft::compare
