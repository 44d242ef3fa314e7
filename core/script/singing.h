// Where somebody sings in the recording, and where there is room between.
#pragma once

#include "project/model.h"
#include "script/cue_sheet.h"

#include <optional>
#include <vector>

namespace luft::script {

/// Proposals less sure than this don't count as singing; kept marks always do.
inline constexpr Confidence kLeastSure{0.5};

/// A place this near to a note's or phrase's edge counts as outside it: below it nobody hears a cut-off tone.
/// Common practice, no source.
inline constexpr Seconds kEdge{0.06};

/// True for a mark that counts: kept, or proposed and sure enough.
bool counts(const project::Mark& mark);

/// Stretches of singing (notes and phrases, run together), in order and apart from each other.
std::vector<Span> singing(const std::vector<project::Mark>& marks);

/// Ends of phrases in order; ends of stretches of singing where no phrase is marked.
std::vector<Seconds> phrase_ends(const std::vector<project::Mark>& marks);

/// Phrases in order of time; stretches of singing where none is marked.
std::vector<Span> phrases(const std::vector<project::Mark>& marks);

/// Where to begin so that a phrase is heard whole: up to half a second before it, for its breath, but not
/// inside the phrase before. Common practice, no source.
Seconds run_up(const std::vector<Span>& phrases, std::size_t phrase);

/// What is left of `whole` when the `taken` spans are cut out.
std::vector<Span> without(const std::vector<Span>& whole, std::vector<Span> taken);

/// Start nearest to `wanted` at which `length` fits into one of the `free` spans; none if nowhere.
std::optional<Seconds> nearest_fit(const std::vector<Span>& free, Seconds wanted, Seconds length);

/// The time nearest to `wanted`; none of an empty list.
std::optional<Seconds> nearest_of(const std::vector<Seconds>& times, Seconds wanted);

/// The note that sounds at `t`, more than kEdge from both its ends; null if none.
const marks::Note* note_at(const std::vector<project::Mark>& marks, Seconds t);

} // namespace luft::script
