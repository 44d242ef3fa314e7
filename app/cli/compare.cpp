// luftpause compare: two performances of the piece on one musical time.
#include "cli/options.h"
#include "cli/sources.h"
#include "cli/typed.h"
#include "cli/verbs.h"
#include "files/compared.h"
#include "files/comparison_formats.h"

#include <algorithm>

namespace luft::cli {
namespace {

struct Options {
    std::string project, a, b, out;
    std::string format = "compare-text";
    std::vector<std::string> pins;
    bool no_harmony = false, json = false;
};

/// Pins as they were typed, two times each; those that the project holds when none were.
std::vector<compare::Pair> pins_of(const Options& options, const project::Project& project,
                                   const project::Performance& a, const project::Performance& b) {
    std::vector<compare::Pair> pins;
    if (options.pins.empty())
        for (const project::Pin& pin : project.pins(a.id, b.id))
            pins.push_back({pin.a, pin.b});
    for (const std::string& text : options.pins) {
        const std::size_t equals = text.find('=');
        if (equals == std::string::npos)
            throw UsageError("'" + text + "' is no pin; write TIME=TIME, as 0:12.5=0:14.1");
        pins.push_back({parse_time(text.substr(0, equals)), parse_time(text.substr(equals + 1))});
    }
    return pins;
}

const files::ComparisonFormat& format_of(const Options& options) {
    const std::string key = options.json ? "compare-json" : options.format;
    const auto& format = *std::ranges::find(files::comparison_formats(), key, &files::ComparisonFormat::key);
    if (options.out.empty() && !std::holds_alternative<files::ComparisonFormat::AsText>(format.make))
        throw UsageError("a PDF can't be printed; say where: --out");
    return format;
}

void work(const Options& options, Frame& frame) {
    const files::ComparisonFormat& format = format_of(options);
    const project::Project project = open_to_read(options.project);
    auto performances = project.performances();
    if (options.a.empty() != options.b.empty()) throw UsageError("name two performances, or none");
    if (options.a.empty() && performances.size() != 2)
        throw UsageError("say which two performances: their labels, after the project");
    const auto a = options.a.empty() ? performances[0] : project.performance(options.a);
    const auto b = options.a.empty() ? performances[1] : project.performance(options.b);
    const Progress progress = frame.progress();
    files::ComparisonMaterial material(project,
                                       files::compare_performances(project, a, b, !options.no_harmony,
                                                                   {.pins = pins_of(options, project, a, b)},
                                                                   progress.part(0, 0.9)));
    if (!options.out.empty()) return files::write(format, material, options.out, progress.part(0.9, 1));
    frame.print(std::get<files::ComparisonFormat::AsText>(format.make)(material));
}

} // namespace

void offer_compare(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "compare", "Set two performances of the piece side by side",
                          "luftpause compare mill.luft A B\n"
                          "luftpause compare mill.luft A B --as pdf --out compared.pdf\n"
                          "luftpause compare mill.luft A B --pin 0:12.5=0:14.1 --json");
    project_argument(verb, options->project);
    optional_argument(verb, "A", options->a, "Label of one performance");
    optional_argument(verb, "B", options->b, "Label of the other one");
    repeated_option(verb, "--pin", options->pins, "TIME=TIME",
                    "Places that belong together: in A, then in B; may be given several times; instead of "
                    "the project's own");
    flag(verb, "--no-harmony", options->no_harmony, "Go by the singing alone; the recordings aren't needed");
    choice_option<std::string>(verb, "--as", options->format,
                               {{"text", "compare-text"},
                                {"json", "compare-json"},
                                {"html", "compare-html"},
                                {"pdf", "compare-pdf"}},
                               "What to write; text unless given");
    flag(verb, "--json", options->json, "The same as --as json");
    out_option(verb, options->out);
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
