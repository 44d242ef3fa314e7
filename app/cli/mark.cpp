// luftpause mark: the coach's hand on the marks: add, keep, drop, move, split, join, kind.
#include "base/text.h"
#include "cli/mark_by_hand.h"
#include "cli/mark_kind.h"
#include "cli/mark_text.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"

#include <tuple>

namespace luft::cli {
namespace {

using project::MarkKind;
using project::MarkState;

struct Options {
    std::string project, performance, word;
    MarkKind kind = MarkKind::breath;
    std::vector<std::int64_t> ids;
    std::optional<Seconds> at, from, to;
};

void add(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    const auto performance = project.performance(options.performance);
    const Span span = span_by_hand(options.kind, options.at, options.from, options.to);
    if (span.start > performance.facts.duration)
        throw Error(Fault::bad_request,
                    "The recording ends at " + clock_text(performance.facts.duration) + ".");
    project::Mark mark = mark_by_hand(project, performance, options.kind, span);
    if (!options.word.empty()) set_kind(mark, options.word);
    mark.id = project.add_mark(mark);
    frame.print("Added " + mark_name(mark) + ".\n");
}

/// Names each mark once it is in its new state.
void set_state(const Options& options, Frame& frame, MarkState state, const std::string& done) {
    project::Project project = open_to_edit(options.project);
    for (const auto id : options.ids)
        std::ignore = project.mark({id}); // all must exist before the first changes
    std::string text;
    for (const auto id : options.ids) {
        project.set_mark_state({id}, state);
        text += done + mark_name(project.mark({id})) + ".\n";
    }
    frame.print(text);
}

void keep(const Options& options, Frame& frame) {
    set_state(options, frame, MarkState::kept, "Kept ");
}

void drop(const Options& options, Frame& frame) {
    set_state(options, frame, MarkState::dropped, "Dropped ");
}

void move(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    const project::MarkId id{options.ids.front()};
    const project::Mark mark = project.mark(id);
    Span span = mark.span();
    if (options.at) {
        // The whole mark goes along.
        span = {*options.at, *options.at + span.length()};
    } else if (options.from || options.to) {
        span = {options.from.value_or(span.start), options.to.value_or(span.end)};
    } else {
        throw UsageError("say where to: --at, or --from and --to");
    }
    project.move_mark(id, span);
    frame.print("Moved " + mark_name(project.mark(id)) + " (was at " + clock_text(mark.span().start) +
                ").\n");
}

void split(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    project.split_phrase({options.ids.front()}, *options.at);
    frame.print("Split phrase " + std::to_string(options.ids.front()) + " at " + clock_text(*options.at) +
                ".\n");
}

void join(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    project.join_phrases({options.ids[0]}, {options.ids[1]});
    frame.print("Joined phrases " + std::to_string(options.ids[0]) + " and " +
                std::to_string(options.ids[1]) + ".\n");
}

void kind(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    project::Mark mark = project.mark({options.ids.front()});
    set_kind(mark, options.word);
    project.change_mark(mark);
    frame.print("Set " + mark_name(mark) + ": " + mark_text(mark) + ".\n");
}

Verb& add_action(Verb& verb, const std::shared_ptr<Options>& options, const std::string& name,
                 const std::string& help, int ids, const std::string& arguments) {
    Verb& action = add_verb(verb, name, help, "luftpause mark mill.luft " + name + " " + arguments);
    if (ids != 0) ids_argument(action, options->ids, ids, "As 'luftpause marks' lists it");
    return action;
}

void offer_add(Verb& verb, Frame& frame, const std::shared_ptr<Options>& options) {
    Verb& action =
        add_action(verb, options, "add", "Set a mark by hand", 0, "--kind breath --from 0:41.2 --to 0:41.6");
    choice_option<MarkKind>(action, "--kind", options->kind,
                            {{"breath", MarkKind::breath},
                             {"phrase", MarkKind::phrase},
                             {"switch", MarkKind::register_switch},
                             {"note", MarkKind::note}},
                            "What it is", Need::required);
    time_option(action, "--at", options->at, "When; for a switch, or a breath of usual length");
    time_option(action, "--from", options->from, "Start");
    time_option(action, "--to", options->to, "End");
    string_option(action, "--what", options->word, "WORD", std::string("What kind of it; ") + kKindWords);
    performance_option(action, options->performance);
    on_run(action, frame, options, add);
}

} // namespace

void offer_mark(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = add_verb(app, "mark", "Keep, drop, set or change marks by hand",
                          "luftpause mark mill.luft keep 12 14 15\n"
                          "luftpause mark mill.luft add --kind breath --from 0:41.2 --to 0:41.6");
    project_and_action(verb, options->project);

    offer_add(verb, frame, options);
    on_run(add_action(verb, options, "keep", "Keep marks as right", kOneOrMore, "12 14"), frame, options,
           keep);
    on_run(add_action(verb, options, "drop", "Drop marks as wrong; they stay dropped", kOneOrMore, "13"),
           frame, options, drop);

    Verb& moved = add_action(verb, options, "move", "Move a mark, or one of its ends", 1, "12 --from 0:41.1");
    time_option(moved, "--at", options->at, "New start; the length stays");
    time_option(moved, "--from", options->from, "New start");
    time_option(moved, "--to", options->to, "New end");
    on_run(moved, frame, options, move);

    Verb& parted = add_action(verb, options, "split", "Split a phrase in two", 1, "7 --at 0:44.0");
    time_option(parted, "--at", options->at, "Where", Need::required);
    on_run(parted, frame, options, split);

    on_run(add_action(verb, options, "join", "Join two neighbouring phrases", 2, "7 8"), frame, options,
           join);

    Verb& set = add_action(verb, options, "kind", "Set what kind of breath, switch or note it is", 1,
                           "21 onset:breathy");
    argument(set, "WORD", options->word, kKindWords);
    on_run(set, frame, options, kind);
}

} // namespace luft::cli
