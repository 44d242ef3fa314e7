// luftpause compare: two performances of the piece on one musical time.
#include "cli/options.h"
#include "cli/sources.h"
#include "cli/typed.h"
#include "cli/verbs.h"
#include "export/compare_json.h"
#include "export/compare_text.h"
#include "files/compared.h"

namespace luft::cli {
namespace {

struct Options {
    std::string project, a, b, out;
    std::vector<std::string> pins;
    bool no_harmony = false, json = false;
};

/// Pins as they were typed, two times each.
std::vector<compare::Pair> pins_of(const Options& options) {
    std::vector<compare::Pair> pins;
    for (const std::string& text : options.pins) {
        const std::size_t equals = text.find('=');
        if (equals == std::string::npos)
            throw UsageError("'" + text + "' is no pin; write TIME=TIME, as 0:12.5=0:14.1");
        pins.push_back({parse_time(text.substr(0, equals)), parse_time(text.substr(equals + 1))});
    }
    return pins;
}

void work(const Options& options, Frame& frame) {
    const project::Project project = open_to_read(options.project);
    auto performances = project.performances();
    if (options.a.empty() != options.b.empty()) throw UsageError("name two performances, or none");
    if (options.a.empty() && performances.size() != 2)
        throw UsageError("say which two performances: their labels, after the project");
    const auto a = options.a.empty() ? performances[0] : project.performance(options.a);
    const auto b = options.a.empty() ? performances[1] : project.performance(options.b);
    const compare::Comparison comparison = files::compare_performances(
        project, a, b, !options.no_harmony, {.pins = pins_of(options)}, frame.progress());
    frame.deliver(options.json ? exports::compare_json(comparison) : exports::compare_text(comparison),
                  options.out, files_of(project));
}

} // namespace

void offer_compare(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "compare", "Set two performances of the piece side by side",
                          "luftpause compare mill.luft A B\n"
                          "luftpause compare mill.luft A B --pin 0:12.5=0:14.1 --json");
    project_argument(verb, options->project);
    optional_argument(verb, "A", options->a, "Label of one performance");
    optional_argument(verb, "B", options->b, "Label of the other one");
    repeated_option(verb, "--pin", options->pins, "TIME=TIME",
                    "Places that belong together: in A, then in B; may be given several times");
    flag(verb, "--no-harmony", options->no_harmony, "Go by the singing alone; the recordings aren't needed");
    flag(verb, "--json", options->json, "Print as JSON");
    out_option(verb, options->out);
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
