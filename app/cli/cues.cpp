// luftpause cues: the script laid out in programme time.
#include "cli/formats.h"
#include "cli/sources.h"
#include "cli/verbs.h"

namespace luft::cli {
namespace {

struct Options {
    std::string project, performance, out;
    std::string format = "cues-text";
};

void work(const Options& options, Frame& frame) {
    const project::Project project = open_to_read(options.project);
    Material material(project, project.performance(options.performance));
    frame.deliver(format_of(options.format).render(material), options.out, files_of(project));
}

} // namespace

void offer_cues(CLI::App& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    CLI::App* verb = app.add_subcommand("cues", "Lay the script out: programme time against media time");
    project_option(verb, options->project);
    performance_option(verb, options->performance);
    choice_option<std::string>(verb, "--as", options->format,
                               {{"text", "cues-text"},
                                {"json", "cues-json"},
                                {"csv", "cues-csv"},
                                {"html", "cues-html"},
                                {"vtt", "captions"},
                                {"chapters", "chapters"}},
                               "What to write; text unless given");
    verb->add_flag_callback(
        "--json", [options] { options->format = "cues-json"; }, "The same as --as json");
    out_option(verb, options->out);
    example(verb, "  luftpause cues mill.luft --as html --out cues.html");
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
