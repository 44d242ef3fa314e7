// luftpause cues: the script laid out in programme time.
#include "cli/sources.h"
#include "cli/verbs.h"
#include "cli/write_format.h"

namespace luft::cli {
namespace {

struct Options {
    std::string project, performance, out;
    std::string format = "cues-text";
    bool json = false;
};

void work(const Options& options, Frame& frame) {
    const project::Project project = open_to_read(options.project);
    Material material(project, project.performance(options.performance));
    const Format& format = format_of(options.json ? "cues-json" : options.format);
    write_format(format, material, options.out, frame);
}

} // namespace

void offer_cues(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "cues", "Lay the script out: programme time against media time",
                          "luftpause cues mill.luft --as html --out cues.html");
    project_argument(verb, options->project);
    performance_option(verb, options->performance);
    choice_option<std::string>(verb, "--as", options->format,
                               {{"text", "cues-text"},
                                {"json", "cues-json"},
                                {"csv", "cues-csv"},
                                {"html", "cues-html"},
                                {"vtt", "captions"},
                                {"chapters", "chapters"}},
                               "What to write; text unless given");
    flag(verb, "--json", options->json, "The same as --as json");
    out_option(verb, options->out);
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
