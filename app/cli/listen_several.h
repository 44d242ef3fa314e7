// Several recordings listened to at once.
#pragma once

#include "cli/hear.h"

#include <string>
#include <vector>

namespace luft::cli {

/// How they are listened to, and where what was heard goes.
struct Several {
    intake::Listening listening;
    int jobs = 1;       ///< how many at once
    std::string folder; ///< for one JSON a recording; made when it isn't there
};

/// Writes the analysis of each recording into the folder, as NAME.json (the recording's name without its
/// ending; NAME-2.json when that is taken), and prints a line for each in the order given. One that can't be
/// listened to doesn't stop the others. Throws Error at the end when there was one, naming them all; Stopped.
void listen_to_files(const std::vector<std::string>& files, const Several& how, Frame& frame);

/// Listens to performances of a project again, stores each in that order, and prints a line for each; their
/// analyses go into the folder as LABEL.json, when one is given. Throws as the above.
void listen_again(project::Project& project, const std::vector<project::Performance>& performances,
                  const Several& how, Frame& frame);

} // namespace luft::cli
