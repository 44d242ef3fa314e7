// luftpause compare: two performances of the piece on one musical time.
#include "base/text.h"
#include "cli/options.h"
#include "cli/sources.h"
#include "cli/typed.h"
#include "cli/verbs.h"
#include "files/compared.h"
#include "files/comparison_formats.h"
#include "files/in_step_file.h"
#include "files/write_all.h"
#include "signal/stretch.h"

#include <algorithm>

namespace luft::cli {
namespace {

struct Options {
    std::string project, a, b, out;
    std::string format; ///< key; empty = text
    std::vector<std::string> pins;
    bool no_harmony = false, json = false;
    std::string in_step; ///< file to write the two to; empty = none
    std::optional<double> speed;
    bool transposed = false;
};

/// Pins as they were typed, two times each; those that the project holds when none were.
std::vector<compare::Pair> pins_of(const Options& options, const project::Project& project,
                                   const project::Performance& a, const project::Performance& b) {
    if (options.pins.empty()) return files::pins_of(project, a, b);
    std::vector<compare::Pair> pins;
    for (const std::string& text : options.pins) {
        const std::size_t equals = text.find('=');
        if (equals == std::string::npos)
            throw UsageError("'" + text + "' is no pin; write TIME=TIME, as 0:12.5=0:14.1");
        pins.push_back({parse_time(text.substr(0, equals)), parse_time(text.substr(equals + 1))});
    }
    return pins;
}

const files::ComparisonFormat& format_of(const Options& options) {
    const std::string key = options.json             ? "compare-json"
                            : options.format.empty() ? "compare-text"
                                                     : options.format;
    const auto& format = *std::ranges::find(files::comparison_formats(), key, &files::ComparisonFormat::key);
    if (options.out.empty() && !std::holds_alternative<files::ComparisonFormat::AsText>(format.make))
        throw UsageError("a PDF can't be printed; say where: --out");
    return format;
}

void write_in_step(const Options& options, const project::Project& project,
                   const compare::Comparison& compared, const Progress& progress, Frame& frame) {
    const Seconds length = files::write_in_step(project, compared, options.in_step,
                                                {options.speed.value_or(1), options.transposed}, progress);
    frame.print("Wrote '" + options.in_step + "': " + clock_text(length) + ", " + compared.a.label +
                " on the left, " + compared.b.label + " on the right.\n");
}

void demand_one_thing(const Options& options) {
    if (options.in_step.empty() && (options.speed || options.transposed))
        throw UsageError("--speed and --transposed go with --in-step FILE");
    if (!options.in_step.empty() && (options.json || !options.out.empty() || !options.format.empty()))
        throw UsageError("--in-step writes sound; ask for the report in a call of its own");
}

void work(const Options& options, Frame& frame) {
    demand_one_thing(options);
    const files::ComparisonFormat& format = format_of(options);
    const project::Project project = open_to_read(options.project);
    auto performances = project.performances();
    if (options.a.empty() != options.b.empty()) throw UsageError("name two performances, or none");
    if (options.a.empty() && performances.size() != 2)
        throw UsageError("say which two performances: their labels, after the project");
    const auto a = options.a.empty() ? performances[0] : project.performance(options.a);
    const auto b = options.a.empty() ? performances[1] : project.performance(options.b);
    if (!options.in_step.empty()) files::spare(options.in_step, files_of(project));
    const Progress progress = frame.progress();
    const double aligned = options.in_step.empty() ? 0.9 : 0.5; // of the work
    auto compared =
        files::compare_performances(project, a, b, !options.no_harmony,
                                    {.pins = pins_of(options, project, a, b)}, progress.part(0, aligned));
    if (!options.in_step.empty())
        return write_in_step(options, project, compared, progress.part(aligned, 1), frame);
    files::ComparisonMaterial material(project, std::move(compared));
    if (!options.out.empty()) return files::write(format, material, options.out, progress.part(aligned, 1));
    frame.print(std::get<files::ComparisonFormat::AsText>(format.make)(material));
}

} // namespace

void offer_compare(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "compare", "Set two performances of the piece side by side",
                          "luftpause compare mill.luft A B\n"
                          "luftpause compare mill.luft A B --as pdf --out compared.pdf\n"
                          "luftpause compare mill.luft A B --pin 0:12.5=0:14.1 --json\n"
                          "luftpause compare mill.luft A B --in-step both.wav --speed 0.5");
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
    string_option(verb, "--in-step", options->in_step, "FILE",
                  "Write both recordings in step instead, A left and B right: .wav, .flac or .m4a");
    number_option(verb, "--speed", options->speed, signal::Stretcher::kSlowest, 1,
                  "Speed of what --in-step writes, 0.25 to 1, at the same pitch");
    flag(verb, "--transposed", options->transposed, "Let --in-step bring B into the key of A");
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
