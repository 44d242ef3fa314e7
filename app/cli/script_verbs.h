// The parts of `luftpause script` that have a file of their own.
#pragma once

#include "cli/verb.h"

namespace luft::cli {

/// add, edit and remove. `project` is the file named before the action; it outlives the reading.
void offer_script_items(Verb& verb, Frame& frame, const std::string& project);
/// mend.
void offer_script_mending(Verb& verb, Frame& frame, const std::string& project);
/// set.
void offer_script_settings(Verb& verb, Frame& frame, const std::string& project);

} // namespace luft::cli
