#include "cli/program.h"

#include "cli/help.h"
#include "cli/verbs.h"
#include "files/version.h"

#include <CLI/CLI.hpp>

namespace luft::cli {

std::unique_ptr<CLI::App> program(Frame& frame) {
    auto app = std::make_unique<CLI::App>(
        "Finds the breaths in a recorded performance, and helps a voice teacher decide where to stop "
        "and what to say there.",
        "luftpause");
    app->set_version_flag("--version", "luftpause " + files::version());
    app->formatter(std::make_shared<HelpFormatter>());
    app->require_subcommand(1);
    app->footer("Example:\n"
                "  luftpause new mill.luft --title 'The Mill at Night'\n"
                "  luftpause add mill.luft cover.mp4 --label A\n"
                "  luftpause moment mill.luft list\n"
                "  luftpause script mill.luft draft\n"
                "  luftpause cues mill.luft\n"
                "Times are seconds or minutes:seconds, as 62.5 or 1:02.5.");
    offer_all(*app, frame);
    return app;
}

} // namespace luft::cli
