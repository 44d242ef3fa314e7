#include "cli/verbs.h"

namespace luft::cli {

void offer_all(Verb& app, Frame& frame) {
    offer_new(app, frame);
    offer_piece(app, frame);
    offer_add(app, frame);
    offer_performance(app, frame);
    offer_listen(app, frame);
    offer_marks(app, frame);
    offer_mark(app, frame);
    offer_moment(app, frame);
    offer_vocabulary(app, frame);
    offer_profile(app, frame);
    offer_beside(app, frame);
    offer_compare(app, frame);
    offer_script(app, frame);
    offer_cues(app, frame);
    offer_guide(app, frame);
    offer_export(app, frame);
    offer_undo(app, frame);
    offer_redo(app, frame);
    offer_check(app, frame);
}

} // namespace luft::cli
