#include "desk/work/review.h"

#include <algorithm>
#include <tuple>

namespace luft::desk {
namespace {

bool comes_before(const Proposal& a, const Proposal& b, ReviewOrder order) {
    if (order == ReviewOrder::by_time)
        return std::tie(a.span.start, a.span.end) < std::tie(b.span.start, b.span.end);
    return std::tie(a.confidence, a.span.start) < std::tie(b.confidence, b.span.start);
}

} // namespace

std::vector<Proposal> open_proposals(const profile::Source& source, ReviewOrder order, bool with_notes) {
    std::vector<Proposal> open;
    for (const auto& mark : source.marks)
        if (mark.state == project::MarkState::proposed &&
            (with_notes || mark.kind() != project::MarkKind::note))
            open.push_back({mark.id, mark.span(), mark.confidence()});
    for (const auto& moment : source.moments)
        if (moment.state == project::MarkState::proposed)
            open.push_back({moment.id, moment.span, moment.confidence});
    std::ranges::stable_sort(open,
                             [&](const Proposal& a, const Proposal& b) { return comes_before(a, b, order); });
    return open;
}

Selection next_proposal(const std::vector<Proposal>& open, ReviewOrder order, const Selection& from,
                        Span last_span, Confidence last_confidence) {
    if (open.empty()) return {};
    const auto here = std::ranges::find(open, from, &Proposal::what);
    if (here != open.end()) return here + 1 == open.end() ? open.front().what : (here + 1)->what;
    const Proposal last{from, last_span, last_confidence};
    const auto after =
        std::ranges::find_if(open, [&](const Proposal& p) { return !comes_before(p, last, order); });
    return after == open.end() ? open.front().what : after->what;
}

} // namespace luft::desk
