// luftpause profile: the technique profile of a performance.
#include "cli/formats.h"
#include "cli/sources.h"
#include "cli/verbs.h"

namespace luft::cli {
namespace {

struct Options {
    std::string project, performance, out;
    std::string as = "text";
};

void work(const Options& options, Frame& frame) {
    const project::Project project = open_to_read(options.project);
    Material material(project, project.performance(options.performance));
    frame.deliver(format_of("profile-" + options.as).render(material), options.out, files_of(project));
}

} // namespace

void offer_profile(CLI::App& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    CLI::App* verb = app.add_subcommand("profile", "Sum a performance up, facet by facet, with the evidence");
    project_option(verb, options->project);
    performance_option(verb, options->performance);
    choice_option<std::string>(verb, "--as", options->as,
                               {{"text", "text"}, {"json", "json"}, {"html", "html"}},
                               "What to write; text unless given");
    verb->add_flag_callback(
        "--json", [options] { options->as = "json"; }, "The same as --as json");
    out_option(verb, options->out);
    example(verb, "  luftpause profile mill.luft --performance A --as html --out profile.html");
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
