// luftpause moment: what the coach means to speak about: list, add, keep, drop, edit, propose.
#include "base/text.h"
#include "cli/moment_text.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "profile/propose.h"

#include <tuple>

namespace luft::cli {
namespace {

using project::MarkState;
using project::Verdict;

struct Options {
    std::string project, performance;
    std::vector<std::int64_t> ids;
    std::optional<Seconds> from, to;
    std::optional<MarkState> state;
    std::optional<Verdict> verdict;
    std::optional<std::string> remark, drill;
    std::string remark_file;
    std::vector<std::string> shades;
    int most = 12;
    bool json = false;
};

/// Puts what was given on the command line into the moment.
void apply(const Options& options, project::Moment& moment) {
    if (options.remark && !options.remark_file.empty())
        throw CLI::ValidationError("give --remark or --remark-file, not both");
    if (options.from) moment.span.start = *options.from;
    if (options.to) moment.span.end = *options.to;
    if (options.verdict) moment.verdict = *options.verdict;
    if (options.remark) moment.remark = *options.remark;
    if (!options.remark_file.empty()) moment.remark = read_text_file(options.remark_file);
    if (options.drill) moment.drill = *options.drill;
    if (!options.shades.empty()) {
        moment.shades.clear();
        for (const std::string& shade : options.shades)
            moment.shades.push_back(vocabulary::parse_tag(shade));
    }
    if (moment.span.end <= moment.span.start) throw CLI::ValidationError("--to must be after --from");
}

void list(const Options& options, Frame& frame) {
    const project::Project project = open_to_read(options.project);
    const auto performance = project.performance(options.performance);
    Json values = Json::array();
    std::string text;
    for (const auto& moment : project.moments(performance.id, options.state == MarkState::dropped)) {
        if (options.state && moment.state != *options.state) continue;
        values.push_back(moment_value(moment));
        text += moment_text(moment);
    }
    if (options.json) return frame.print(json_text(values));
    frame.print(text.empty() ? "No such moments.\n" : text);
}

void add(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    const auto performance = project.performance(options.performance);
    project::Moment moment;
    moment.performance = performance.id;
    apply(options, moment);
    if (moment.span.start > performance.facts.duration)
        throw Error(Fault::bad_request,
                    "The recording ends at " + clock_text(performance.facts.duration) + ".");
    moment.id = project.add_moment(moment);
    frame.print("Added " + moment_name(moment) + ".\n");
}

void edit(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    project::Moment moment = project.moment({options.ids.front()});
    apply(options, moment);
    project.change_moment(moment);
    frame.print(moment_text(project.moment(moment.id)));
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
    const auto source = profile_source(project, performance);
    if (!source.listening)
        throw Error(Fault::bad_request, "'" + performance.label + "' hasn't been listened to yet.",
                    "Run 'luftpause listen' on the project first.");
    const int stored =
        project.propose_moments(performance.id, profile::propose_moments(source, options.most));
    frame.print("Proposed " + counted(static_cast<std::size_t>(stored), "moment") +
                ". What you kept, dropped or changed is as it was.\n");
}

constexpr const char* kListed = "As 'luftpause moment PROJECT list' shows it";

void content_options(CLI::App* action, Options& options) {
    action->add_option("--shade", options.shades, "Facet and shade, as onset:glottal; may be repeated")
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll)
        ->type_name("FACET:SHADE");
    choice_option<std::optional<Verdict>>(
        action, "--verdict", options.verdict,
        {{"strength", Verdict::strength}, {"watch", Verdict::watch}, {"explain", Verdict::explain}},
        "What it is shown for");
    text_option(action, "--remark", options.remark, "Your words");
    action->add_option("--remark-file", options.remark_file, "Text file with your words")->type_name("FILE");
    text_option(action, "--drill", options.drill, "Key of a drill; see 'luftpause vocabulary'");
}

void offer_lists(CLI::App* verb, Frame& frame, const std::shared_ptr<Options>& options) {
    CLI::App* shown = verb->add_subcommand("list", "List the moments");
    performance_option(shown, options->performance);
    choice_option<std::optional<MarkState>>(
        shown, "--state", options->state,
        {{"proposed", MarkState::proposed}, {"kept", MarkState::kept}, {"dropped", MarkState::dropped}},
        "Only in this state; dropped ones show only when asked for");
    shown->add_flag("--json", options->json, "Print as JSON");
    example(shown, "  luftpause moment mill.luft list --state proposed");
    on_run(shown, frame, options, list);

    CLI::App* proposed = verb->add_subcommand("propose", "Propose moments anew from the marks");
    performance_option(proposed, options->performance);
    proposed->add_option("--most", options->most, "At most so many")
        ->check(CLI::Range(1, 1000))
        ->type_name("NUMBER");
    example(proposed, "  luftpause moment mill.luft propose --most 20");
    on_run(proposed, frame, options, propose);
}

} // namespace

void offer_moment(CLI::App& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    CLI::App* verb = app.add_subcommand("moment", "List, keep, drop, add or edit the moments to speak about");
    project_and_action(verb, options->project);
    example(verb, "  luftpause moment mill.luft list\n  luftpause moment mill.luft keep 3 5");
    offer_lists(verb, frame, options);

    CLI::App* added = verb->add_subcommand("add", "Add a moment by hand");
    time_option(added, "--from", options->from, "Start")->required();
    time_option(added, "--to", options->to, "End")->required();
    content_options(added, *options);
    performance_option(added, options->performance);
    example(added, "  luftpause moment mill.luft add --from 0:41.0 --to 0:44.5 --shade onset:glottal \\\n"
                   "      --verdict watch --remark 'The vowel is hit, not met.'");
    on_run(added, frame, options, add);

    CLI::App* edited = verb->add_subcommand("edit", "Change a moment; what isn't given stays");
    ids_option(edited, options->ids, 1, kListed);
    time_option(edited, "--from", options->from, "New start");
    time_option(edited, "--to", options->to, "New end");
    content_options(edited, *options);
    example(edited, "  luftpause moment mill.luft edit 3 --remark 'Hear how late the vibrato comes.'");
    on_run(edited, frame, options, edit);

    CLI::App* kept = verb->add_subcommand("keep", "Keep proposed moments");
    ids_option(kept, options->ids, kOneOrMore, kListed);
    example(kept, "  luftpause moment mill.luft keep 3 5");
    on_run(kept, frame, options, keep);

    CLI::App* dropped = verb->add_subcommand("drop", "Drop moments; they stay dropped");
    ids_option(dropped, options->ids, kOneOrMore, kListed);
    example(dropped, "  luftpause moment mill.luft drop 4");
    on_run(dropped, frame, options, drop);
}

} // namespace luft::cli
