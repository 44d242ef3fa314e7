// luftpause marks: what was found in a performance, as a table or for other programs.
#include "base/text.h"
#include "cli/mark_text.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "export/mark_words.h"
#include "export/marks_csv.h"
#include "export/marks_json.h"

#include <algorithm>
#include <limits>

namespace luft::cli {
namespace {

using project::MarkKind;
using project::MarkState;

struct Options {
    std::string project, performance, out;
    std::optional<MarkKind> kind;
    std::optional<MarkState> state;
    std::optional<Seconds> from, to;
    std::optional<double> sure;
    bool json = false;
    bool csv = false;
};

bool wanted(const project::Mark& mark, const Options& options) {
    if (options.kind && mark.kind() != *options.kind) return false;
    if (options.state && mark.state != *options.state) return false;
    if (options.sure && mark.confidence().value < *options.sure) return false;
    const Span span = mark.span();
    return span.end >= options.from.value_or(Seconds(0)) &&
           span.start <= options.to.value_or(Seconds(std::numeric_limits<double>::max()));
}

/// For a person. A song has hundreds of notes: they show when they are asked for.
std::string table_text(const std::vector<project::Mark>& marks, bool with_notes) {
    Table table({{"ID", Align::right},
                 {"FROM", Align::right},
                 {"TO", Align::right},
                 {"KIND"},
                 {"STATE"},
                 {"SURE", Align::right},
                 {"WHAT"}});
    std::size_t notes = 0;
    for (const project::Mark& mark : marks) {
        if (mark.kind() == MarkKind::note && !with_notes) {
            ++notes;
            continue;
        }
        const Span span = mark.span();
        table.add({std::to_string(mark.id.value), clock_text(span.start),
                   span.length() > Seconds(0) ? clock_text(span.end) : "",
                   std::string(exports::word(mark.kind())),
                   std::string(mark.origin == project::Origin::coach ? "by hand" : exports::word(mark.state)),
                   fixed(100 * mark.confidence().value, 0) + " %", mark_text(mark)});
    }
    std::string text = table.empty() ? "" : table.text();
    if (notes > 0) text += counted(notes, "note") + " not shown; --kind note shows them.\n";
    return text.empty() ? "No such marks.\n" : text;
}

void work(const Options& options, Frame& frame) {
    if (options.json && options.csv) throw UsageError("choose --json or --csv, not both");
    const project::Project project = open_to_read(options.project);
    const project::Performance performance = project.performance(options.performance);
    const bool with_dropped = options.state == MarkState::dropped;
    std::vector<project::Mark> marks = project.marks(performance.id, with_dropped);
    std::erase_if(marks, [&](const project::Mark& mark) { return !wanted(mark, options); });
    const std::string text = options.json
                                 ? exports::marks_json(performance, marks, project.sung_words(performance.id))
                             : options.csv ? exports::marks_csv(performance, marks)
                                           : table_text(marks, options.kind == MarkKind::note);
    frame.deliver(text, options.out, files_of(project));
}

} // namespace

void offer_marks(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "marks", "Show the breaths, phrases, switches and notes of a performance",
                          "luftpause marks mill.luft --kind breath\n"
                          "luftpause marks mill.luft --from 1:00 --to 1:30 --csv");
    project_argument(verb, options->project);
    performance_option(verb, options->performance);
    choice_option<std::optional<MarkKind>>(verb, "--kind", options->kind,
                                           {{"breath", MarkKind::breath},
                                            {"phrase", MarkKind::phrase},
                                            {"switch", MarkKind::register_switch},
                                            {"note", MarkKind::note}},
                                           "Only this kind");
    choice_option<std::optional<MarkState>>(
        verb, "--state", options->state,
        {{"proposed", MarkState::proposed}, {"kept", MarkState::kept}, {"dropped", MarkState::dropped}},
        "Only in this state; dropped ones show only when asked for");
    time_option(verb, "--from", options->from, "Only from this time on");
    time_option(verb, "--to", options->to, "Only up to this time");
    number_option(verb, "--sure", options->sure, 0, 1, "Only with at least this confidence, 0 to 1");
    flag(verb, "--json", options->json, "Print as JSON");
    flag(verb, "--csv", options->csv, "Print as CSV");
    out_option(verb, options->out);
    on_run(verb, frame, options, work);
}

} // namespace luft::cli
