#include "project/same_mark.h"

#include <algorithm>
#include <cmath>

namespace luft::project {
namespace {

bool near(Seconds a, Seconds b) {
    return std::abs((a - b).value()) <= kNear.value();
}

bool same_place(const Mark& proposal, Span stored, MarkState state) {
    const Span span = proposal.span();
    const MarkKind kind = proposal.kind();
    if (kind == MarkKind::register_switch) return near(span.start, stored.start);
    if (kind == MarkKind::breath && near(span.middle(), stored.middle())) return true;
    const Seconds common = std::min(span.end, stored.end) - std::max(span.start, stored.start);
    const Seconds against = state == MarkState::dropped
                                ? std::max(span.end, stored.end) - std::min(span.start, stored.start)
                                : std::min(span.length(), stored.length());
    return common.value() > 0 && common >= against * kCommonShare;
}

} // namespace

bool means_the_same(const Mark& proposal, const MarkRow& stored) {
    if (proposal.kind() != stored.mark.kind()) return false;
    return same_place(proposal, stored.mark.span(), stored.mark.state) ||
           (stored.found && same_place(proposal, *stored.found, MarkState::dropped));
}

} // namespace luft::project
