// The review pass: which proposals are still open, and which one comes next.
#pragma once

#include "desk/work/selection.h"
#include "profile/profile.h"

#include <vector>

namespace luft::desk {

enum class ReviewOrder { by_time, unsure_first };

/// One proposal that the coach hasn't dealt with.
struct Proposal {
    Selection what;
    Span span;
    Confidence confidence;
};

/// Open proposals in the order of the pass: breaths, phrases, switches and moments; notes too when asked for,
/// since a song has hundreds.
std::vector<Proposal> open_proposals(const profile::Source& source, ReviewOrder order,
                                     bool with_notes = false);

/// The one that comes after `from` (which may have been dealt with meanwhile: then the one that took its
/// place): the first after the last one, `from` itself when it is the only one, none when none is open.
/// `last_span` and `last_confidence` say where `from` was.
Selection next_proposal(const std::vector<Proposal>& open, ReviewOrder order, const Selection& from,
                        Span last_span, Confidence last_confidence);

} // namespace luft::desk
