// The review pass: from proposal to proposal, one key each.
#include "desk/frame.h"
#include "desk/text.h"
#include "desk/work/edits.h"

namespace luft::desk {

void Frame::select_and_reveal(const Selection& selection) {
    session_.select(selection);
    if (const auto* mark = session_.selected_mark()) {
        sheet_->reveal(mark->span().start);
        if (!playing_.playing()) go_to(mark->span().start);
    } else if (const auto* moment = session_.selected_moment()) {
        sheet_->reveal(moment->span.start);
        if (!playing_.playing()) go_to(moment->span.start);
    }
}

void Frame::review_next() {
    const auto open = open_proposals(session_.source(), order_, review_notes_);
    if (open.empty()) return say("Nothing is left to review: every proposal has been kept or dropped.");
    const auto* mark = session_.selected_mark();
    const auto* moment = session_.selected_moment();
    const Span span = mark     ? mark->span()
                      : moment ? moment->span
                               : Span{playing_.position(), playing_.position()};
    const Confidence confidence = mark ? mark->confidence() : moment ? moment->confidence : Confidence{0};
    select_and_reveal(next_proposal(open, order_, session_.selection(), span, confidence));
}

void Frame::keep_or_drop(project::MarkState state) {
    const auto* mark = session_.selected_mark();
    const auto* moment = session_.selected_moment();
    if (!mark && !moment) return;
    const bool was_open = (mark && mark->state == project::MarkState::proposed) ||
                          (moment && moment->state == project::MarkState::proposed);
    const Selection from = session_.selection();
    const Span span = mark ? mark->span() : moment->span;
    const Confidence confidence = mark ? mark->confidence() : moment->confidence;
    set_state(session_, state);
    if (const auto done = session_.undo_label()) transport_->show_note(shown("Done: " + *done));
    // In the review pass one key a proposal is enough: the next one comes by itself.
    if (!was_open) return;
    const auto open = open_proposals(session_.source(), order_, review_notes_);
    select_and_reveal(next_proposal(open, order_, from, span, confidence));
}

} // namespace luft::desk
