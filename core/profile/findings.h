// The three lists of a profile: strengths, watch, practise.
#pragma once

#include "profile/draft.h"

#include <vector>

namespace luft::profile {

/// Adds what the coach has marked as a strength or to be watched: every kept moment with such a verdict.
void add_coach_findings(const Source& source, std::vector<Candidate>& to);

/// Fills `strengths`, `watch`, `practise` and `drills` of the profile: the weightiest candidates, the coach's
/// before the program's, and a drill for each thing to watch that the drill book has one for.
void fill_lists(const vocabulary::Vocabulary& vocabulary, std::vector<Candidate> candidates,
                Profile& profile);

} // namespace luft::profile
