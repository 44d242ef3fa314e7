// Numbers and measured values as one says them.
#pragma once

#include "project/model.h"

#include <optional>
#include <string>
#include <vector>

namespace luft::script {

/// "one" to "twenty", digits above.
std::string spoken_number(int n);

/// "about a third of a second", "about two seconds".
std::string spoken_length(Seconds length);

/// "about a quarter of a semitone", "about a whole tone"; of the amount, whatever its sign.
std::string spoken_interval(Cents interval);

/// One or two sentences with what the marks inside a span say about a shade, in words that can be spoken;
/// none when no mark speaks for it.
std::optional<std::string> spoken_evidence(const vocabulary::Tag& tag, Span span,
                                           const std::vector<project::Mark>& marks);

/// The evidence that the ear gave in writing for an onset or a release of this kind inside the span; empty
/// when there is none.
std::string written_evidence(const vocabulary::Tag& tag, Span span, const std::vector<project::Mark>& marks);

/// "A, B and C".
std::string listed(const std::vector<std::string>& parts);

/// A text as a sentence: first letter capital, a full stop at the end if it has no such mark.
std::string sentence(std::string text);

} // namespace luft::script
