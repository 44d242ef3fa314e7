// The verbs of `luftpause`, each in a file of its name.
#pragma once

#include "cli/verb.h"

namespace luft::cli {

void offer_new(Verb& app, Frame& frame);
void offer_piece(Verb& app, Frame& frame);
void offer_add(Verb& app, Frame& frame);
void offer_performance(Verb& app, Frame& frame);
void offer_listen(Verb& app, Frame& frame);
void offer_marks(Verb& app, Frame& frame);
void offer_mark(Verb& app, Frame& frame);
void offer_moment(Verb& app, Frame& frame);
void offer_vocabulary(Verb& app, Frame& frame);
void offer_profile(Verb& app, Frame& frame);
void offer_beside(Verb& app, Frame& frame);
void offer_script(Verb& app, Frame& frame);
void offer_cues(Verb& app, Frame& frame);
void offer_compare(Verb& app, Frame& frame);
void offer_guide(Verb& app, Frame& frame);
void offer_export(Verb& app, Frame& frame);
void offer_undo(Verb& app, Frame& frame);
void offer_redo(Verb& app, Frame& frame);
void offer_check(Verb& app, Frame& frame);

/// All of them, in the order in which the help lists them.
void offer_all(Verb& app, Frame& frame);

} // namespace luft::cli
