// The verbs of `luftpause`, each in a file of its name.
#pragma once

#include "cli/verb.h"

namespace luft::cli {

void offer_new(CLI::App& app, Frame& frame);
void offer_piece(CLI::App& app, Frame& frame);
void offer_add(CLI::App& app, Frame& frame);
void offer_performance(CLI::App& app, Frame& frame);
void offer_listen(CLI::App& app, Frame& frame);
void offer_marks(CLI::App& app, Frame& frame);
void offer_mark(CLI::App& app, Frame& frame);
void offer_moment(CLI::App& app, Frame& frame);
void offer_vocabulary(CLI::App& app, Frame& frame);
void offer_profile(CLI::App& app, Frame& frame);
void offer_script(CLI::App& app, Frame& frame);
void offer_cues(CLI::App& app, Frame& frame);
void offer_export(CLI::App& app, Frame& frame);
void offer_undo(CLI::App& app, Frame& frame);
void offer_redo(CLI::App& app, Frame& frame);
void offer_check(CLI::App& app, Frame& frame);

} // namespace luft::cli
