// What the second performance does otherwise than the first.
#pragma once

#include "compare/counterparts.h"
#include "compare/difference.h"

#include <string>
#include <vector>

namespace luft::compare {

/// How the two are called in sentences, and their words, where known, to name places by.
struct Wording {
    std::string a = "The first", b = "The second";
    std::vector<project::SungWord> words_a = {}, words_b = {}; ///< in order of time
};

/// Those that hold for the whole first, then the others in order of A's time. Only what is beyond the ear's
/// own error (ear_errors.h) is told; where a stretch of the alignment is under 0.5 sure, nothing is. Breaths
/// count as the same within 0.5 s on the common time; one that the other side may have taken unheard, because
/// it pauses there as well, isn't told.
std::vector<Difference> find_differences(const Side& a, const Side& b, const Alignment& alignment,
                                         const Counterparts& counterparts, const Wording& wording = {});

} // namespace luft::compare
