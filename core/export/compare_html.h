// Two compared performances as one page for screen and paper.
#pragma once

#include "compare/comparison.h"
#include "profile/profile.h"

#include <string>

namespace luft::exports {

/// Self-contained page (see page.h). What prints on its first sheet is to talk from: who the two are, key,
/// tempo, what to speak of first and where to hear it. Then the phrases that differ most, drawn below each
/// other, the tempo curve, phrase against phrase, and every difference with its size against the expected
/// measuring error. `a` and `b` are what the comparison was made from.
std::string compare_html(const compare::Comparison& comparison, const profile::Source& a,
                         const profile::Source& b);

} // namespace luft::exports
