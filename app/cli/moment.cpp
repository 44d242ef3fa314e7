// luftpause moment: what the coach means to speak about: list, add, keep, drop, edit, propose.
#include "base/text.h"
#include "cli/moment_text.h"
#include "cli/quote.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "profile/gather.h"
#include "profile/propose.h"

#include <tuple>

namespace luft::cli {
namespace {

using project::MarkState;
using project::Verdict;

constexpr std::int64_t kMostProposals = 1000;

struct Options {
    std::string project, performance;
    std::vector<std::int64_t> ids;
    std::optional<Seconds> from, to;
    std::optional<MarkState> state;
    std::optional<Verdict> verdict;
    std::optional<std::string> remark, drill;
    std::string remark_file;
    std::vector<std::string> shades;
    std::int64_t most = 12;
    std::optional<TypedQuote> beside;
    bool no_beside = false;
    bool json = false;
};

/// Puts what was given on the command line into the moment.
void apply(const Options& options, const project::Project& project, project::Moment& moment) {
    if (options.beside && options.no_beside) throw UsageError("give --beside or --no-beside, not both");
    if (options.remark && !options.remark_file.empty())
        throw UsageError("give --remark or --remark-file, not both");
    if (options.from) moment.span.start = *options.from;
    if (options.to) moment.span.end = *options.to;
    if (options.verdict) moment.verdict = *options.verdict;
    if (options.remark) moment.remark = *options.remark;
    if (!options.remark_file.empty()) moment.remark = read_text_file(options.remark_file);
    if (options.drill) moment.drill = *options.drill;
    if (options.beside) moment.beside = found(project, *options.beside);
    if (options.no_beside) moment.beside.reset();
    if (!options.shades.empty()) {
        moment.shades.clear();
        for (const std::string& shade : options.shades)
            moment.shades.push_back(vocabulary::parse_tag(shade));
    }
    if (moment.span.end <= moment.span.start) throw UsageError("--to must be after --from");
}

void list(const Options& options, Frame& frame) {
    const project::Project project = open_to_read(options.project);
    const auto performance = project.performance(options.performance);
    const Labels labels = labels_of(project);
    Json values = Json::array();
    std::string text;
    for (const auto& moment : project.moments(performance.id, options.state == MarkState::dropped)) {
        if (options.state && moment.state != *options.state) continue;
        values.push_back(moment_value(moment, labels));
        text += moment_text(moment, labels);
    }
    if (options.json) return frame.print(json_text(values));
    frame.print(text.empty() ? "No such moments.\n" : text);
}

void add(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    const auto performance = project.performance(options.performance);
    project::Moment moment;
    moment.performance = performance.id;
    apply(options, project, moment);
    if (moment.span.start > performance.facts.duration)
        throw Error(Fault::bad_request,
                    "The recording ends at " + clock_text(performance.facts.duration) + ".");
    moment.id = project.add_moment(moment);
    frame.print("Added " + moment_name(moment) + ".\n");
}

void edit(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    project::Moment moment = project.moment({options.ids.front()});
    apply(options, project, moment);
    project.change_moment(moment);
    frame.print(moment_text(project.moment(moment.id), labels_of(project)));
}

void set_state(const Options& options, Frame& frame, MarkState state, const std::string& done) {
    project::Project project = open_to_edit(options.project);
    for (const auto id : options.ids)
        std::ignore = project.moment({id}); // all must exist before the first changes
    std::string text;
    for (const auto id : options.ids) {
        project.set_moment_state({id}, state);
        text += done + moment_name(project.moment({id})) + ".\n";
    }
    frame.print(text);
}

void keep(const Options& options, Frame& frame) {
    set_state(options, frame, MarkState::kept, "Kept ");
}

void drop(const Options& options, Frame& frame) {
    set_state(options, frame, MarkState::dropped, "Dropped ");
}

void propose(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    const auto performance = project.performance(options.performance);
    const auto source = profile::gather(project, performance);
    if (!source.listening)
        throw Error(Fault::bad_request, "'" + performance.label + "' hasn't been listened to yet.",
                    "Run 'luftpause listen' on the project first.");
    const int stored = project.propose_moments(
        performance.id, profile::propose_moments(source, static_cast<int>(options.most)));
    frame.print("Proposed " + counted(static_cast<std::size_t>(stored), "moment") +
                ". What you kept, dropped or changed is as it was.\n");
}

Verb& add_action(Verb& verb, const std::shared_ptr<Options>& options, const std::string& name,
                 const std::string& help, int ids, const std::string& arguments) {
    Verb& action = add_verb(verb, name, help, "luftpause moment mill.luft " + name + " " + arguments);
    if (ids != 0) ids_argument(action, options->ids, ids, "As 'luftpause moment PROJECT list' shows it");
    return action;
}

void content_options(Verb& action, Options& options) {
    repeated_option(action, "--shade", options.shades, "FACET:SHADE", "As onset:glottal; may be repeated");
    choice_option<std::optional<Verdict>>(
        action, "--verdict", options.verdict,
        {{"strength", Verdict::strength}, {"watch", Verdict::watch}, {"explain", Verdict::explain}},
        "What it is shown for");
    text_option(action, "--remark", options.remark, "Your words");
    string_option(action, "--remark-file", options.remark_file, "FILE", "Text file with your words");
    text_option(action, "--drill", options.drill, "Key of a drill; see 'luftpause vocabulary'");
    quote_option(action, "--beside", options.beside,
                 "The same place in another performance, to compare with");
}

void offer_lists(Verb& verb, Frame& frame, const std::shared_ptr<Options>& options) {
    Verb& shown = add_action(verb, options, "list", "List the moments", 0, "--state proposed");
    performance_option(shown, options->performance);
    choice_option<std::optional<MarkState>>(
        shown, "--state", options->state,
        {{"proposed", MarkState::proposed}, {"kept", MarkState::kept}, {"dropped", MarkState::dropped}},
        "Only in this state; dropped ones show only when asked for");
    flag(shown, "--json", options->json, "Print as JSON");
    on_run(shown, frame, options, list);

    Verb& proposed =
        add_action(verb, options, "propose", "Propose moments anew from the marks", 0, "--most 20");
    performance_option(proposed, options->performance);
    whole_option(proposed, "--most", options->most, 1, kMostProposals, "At most so many");
    on_run(proposed, frame, options, propose);
}

} // namespace

void offer_moment(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "moment", "List, keep, drop, add or edit the moments to speak about",
                          "luftpause moment mill.luft list\nluftpause moment mill.luft keep 3 5");
    project_and_action(verb, options->project);
    offer_lists(verb, frame, options);

    Verb& added = add_action(verb, options, "add", "Add a moment by hand", 0,
                             "--from 0:41.0 --to 0:44.5 --shade onset:glottal \\\n"
                             "    --verdict watch --remark 'The vowel is hit, not met.'");
    time_option(added, "--from", options->from, "Start", Need::required);
    time_option(added, "--to", options->to, "End", Need::required);
    content_options(added, *options);
    performance_option(added, options->performance);
    on_run(added, frame, options, add);

    Verb& edited = add_action(verb, options, "edit", "Change a moment; what isn't given stays", 1,
                              "3 --remark 'Hear how late the vibrato comes.'");
    time_option(edited, "--from", options->from, "New start");
    time_option(edited, "--to", options->to, "New end");
    content_options(edited, *options);
    flag(edited, "--no-beside", options->no_beside, "Compare with no other performance");
    on_run(edited, frame, options, edit);

    on_run(add_action(verb, options, "keep", "Keep proposed moments", kOneOrMore, "3 5"), frame, options,
           keep);
    on_run(add_action(verb, options, "drop", "Drop moments; they stay dropped", kOneOrMore, "4"), frame,
           options, drop);
}

} // namespace luft::cli
