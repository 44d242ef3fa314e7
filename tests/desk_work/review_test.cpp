#include "desk/work/edits.h"
#include "desk/work/review.h"
#include "desk_work/desk.h"

#include <catch2/catch.hpp>

using namespace luft;
using namespace luft::desk;

namespace {

/// Keeps every proposal in turn, as the review pass does; how often.
int walk(Desk& desk, ReviewOrder order, bool notes, std::vector<Proposal>* seen = nullptr) {
    Selection at = next_proposal(open_proposals(desk.session.source(), order, notes), order, {}, {}, {0});
    int count = 0;
    while (!std::holds_alternative<std::monostate>(at) && count < 50) {
        const auto open = open_proposals(desk.session.source(), order, notes);
        const auto here = *std::ranges::find(open, at, &Proposal::what);
        if (seen) seen->push_back(here);
        desk.session.select(at);
        set_state(desk.session, project::MarkState::kept);
        ++count;
        at = next_proposal(open_proposals(desk.session.source(), order, notes), order, at, here.span,
                           here.confidence);
    }
    return count;
}

} // namespace

TEST_CASE("The review pass comes by every open proposal once, in order of time") {
    Desk desk;
    std::vector<Proposal> seen;
    CHECK(walk(desk, ReviewOrder::by_time, false, &seen) == 3); // two phrases and a breath
    CHECK(std::ranges::is_sorted(seen, {}, [](const Proposal& p) { return p.span.start; }));
    CHECK(open_proposals(desk.session.source(), ReviewOrder::by_time).empty());
}

TEST_CASE("Unsure ones first begins with the lowest confidence") {
    Desk desk;
    std::vector<Proposal> seen;
    walk(desk, ReviewOrder::unsure_first, true, &seen);
    CHECK(seen.size() == desk.marks_made);
    CHECK(std::ranges::is_sorted(seen, {}, &Proposal::confidence));
}

TEST_CASE("The pass goes round: after the last proposal comes the first that is still open") {
    Desk desk;
    const auto open = open_proposals(desk.session.source(), ReviewOrder::by_time);
    REQUIRE(open.size() == 3);
    CHECK(next_proposal(open, ReviewOrder::by_time, open.back().what, open.back().span,
                        open.back().confidence) == open.front().what);
    CHECK(next_proposal({}, ReviewOrder::by_time, open.back().what, {}, {0}) == Selection{});
}
