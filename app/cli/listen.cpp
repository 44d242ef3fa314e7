// luftpause listen: the whole analysis of a recording, or of a performance in a project.
#include "base/write_file.h"
#include "cli/hear.h"
#include "cli/sources.h"
#include "cli/verbs.h"
#include "export/analysis_json.h"
#include "files/write_all.h"

namespace luft::cli {
namespace {

struct Options {
    std::string input, performance, out;
    intake::Listening listening;
};

void listen_to_file(const Options& options, Frame& frame) {
    if (!options.performance.empty())
        throw UsageError("--performance is for projects, and this is a recording");
    const intake::Heard heard = intake::hear([&] { return open_file(options.input); }, options.listening,
                                             kPartialRemedy, frame.progress());
    frame.deliver(exports::analysis_json(heard.analysis, heard.facts), options.out, {options.input});
}

void listen_again(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.input);
    const project::Performance performance = project.performance(options.performance);
    if (!options.out.empty()) files::spare(options.out, files_of(project));
    const auto heard =
        intake::listen_again(project, performance, options.listening.accompaniment, frame.progress()).heard;
    if (options.out.empty()) return frame.print(found_text(heard->analysis));
    // It is stored by now, so that it is too late to stop.
    write_file(options.out, exports::analysis_json(heard->analysis, heard->facts));
}

void work(const Options& options, Frame& frame) {
    looks_like_project(options.input) ? listen_again(options, frame) : listen_to_file(options, frame);
}

} // namespace

void offer_listen(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(
        app, "listen",
        "Print the whole analysis of a recording as JSON, or listen to a project's performance again",
        "luftpause listen cover.mp4 --out cover.json\n"
        "luftpause listen mill.luft --performance A --voice accompanied");
    argument(verb, "MEDIA", options->input,
             "A recording; or a project, where listening again keeps what the coach did");
    performance_option(verb, options->performance);
    listening_options(verb, options->listening);
    out_option(verb, options->out);
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
