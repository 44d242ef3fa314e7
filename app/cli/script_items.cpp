// luftpause script add, edit, remove: single stops and asides, and the coach's own words.
#include "cli/quote.h"
#include "cli/script_text.h"
#include "cli/script_verbs.h"
#include "cli/sources.h"

#include <limits>

namespace luft::cli {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;

constexpr double kSlowest = 0.25; // the slowest replay, as in the domain model

constexpr std::int64_t kAnyId = std::numeric_limits<std::int64_t>::max();

struct Options {
    explicit Options(const std::string& named) : project(named) {}

    const std::string& project; ///< read before the action's own options
    std::string performance, text_file;
    std::vector<std::int64_t> ids;
    std::optional<ScriptItemKind> kind;
    std::optional<Seconds> at, resume, rehearsed;
    std::optional<std::string> text;
    std::optional<Span> replay;
    std::optional<TypedQuote> quote;
    std::optional<double> speed;
    std::int64_t moment = 0;
    bool no_quote = false, no_replay = false, no_resume = false, estimate = false, program_words = false;
};

bool has_text(const Options& options) {
    return options.text || !options.text_file.empty();
}

/// Puts what was given on the command line into the item.
void apply(const Options& options, const project::Project& project, ScriptItem& item) {
    if (options.quote && options.no_quote) throw UsageError("give --quote or --no-quote, not both");
    if (options.text && !options.text_file.empty()) throw UsageError("give --text or --text-file, not both");
    if (options.program_words && has_text(options))
        throw UsageError("give words of your own or --program-words, not both");
    if (options.kind) item.kind = *options.kind;
    if (options.at) item.at = *options.at;
    if (options.text) item.text = *options.text;
    if (!options.text_file.empty()) item.text = read_text_file(options.text_file);
    if (has_text(options)) item.own_words = true;
    if (options.program_words) item.own_words = false;
    if (options.quote) item.quote = found(project, *options.quote);
    if (options.no_quote) item.quote.reset();
    if (options.replay) item.replay = options.replay;
    if (options.speed) item.replay_speed = *options.speed;
    if (options.no_replay) item.replay.reset();
    if (options.resume) item.resume = options.resume;
    if (options.no_resume) item.resume.reset();
    if (options.rehearsed) item.rehearsed = options.rehearsed;
    if (options.estimate) item.rehearsed.reset();
}

void add(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    const auto performance = project.performance(options.performance);
    ScriptItem item;
    item.performance = performance.id;
    const bool has_place = options.kind == ScriptItemKind::stop || options.kind == ScriptItemKind::aside;
    if (options.moment != 0) {
        const project::Moment moment = project.moment({options.moment});
        item.moment = moment.id;
        // A stop talks about what was just heard; an aside speaks while it sounds.
        item.at = options.kind == ScriptItemKind::stop ? moment.span.end : moment.span.start;
    } else if (has_place && !options.at) {
        throw UsageError("say where: --at, or --moment");
    }
    apply(options, project, item);
    item.id = project.add_script_item(item);
    if (item.own_words) project.change_script_item(item);
    frame.print("Added " + item_name(item) + ".\n");
}

ScriptItem stored(const project::Project& project, std::int64_t id) {
    for (const auto& performance : project.performances())
        for (const ScriptItem& item : project.script(performance.id))
            if (item.id.value == id) return item;
    throw Error(Fault::not_found, "There is no script item " + std::to_string(id) + ".",
                "See 'luftpause script PROJECT show'.");
}

void edit(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    ScriptItem item = stored(project, options.ids.front());
    apply(options, project, item);
    project.change_script_item(item);
    frame.print(item_text(stored(project, item.id.value), labels_of(project)));
}

void remove(const Options& options, Frame& frame) {
    project::Project project = open_to_edit(options.project);
    std::string text;
    for (const auto id : options.ids)
        text += "Removed " + item_name(stored(project, id)) + ".\n";
    for (const auto id : options.ids)
        project.remove_script_item({id});
    frame.print(text);
}

void content_options(Verb& action, Options& options) {
    time_option(action, "--at", options.at, "Where in the recording");
    text_option(action, "--text", options.text, "Your words");
    string_option(action, "--text-file", options.text_file, "FILE", "Text file with your words");
    quote_option(action, "--quote", options.quote,
                 "Span of another performance that a stop plays, before the replay");
    span_option(action, "--replay", options.replay, "Span that a stop plays again: two times");
    number_option(action, "--speed", options.speed, kSlowest, 1,
                  "Speed of the replay and the quote, 0.25 to 1");
    time_option(action, "--resume", options.resume, "Where playback goes on after a stop");
    time_option(action, "--rehearsed", options.rehearsed, "Measured talk time");
}

void kind_option(Verb& action, Options& options, Need need) {
    choice_option<std::optional<ScriptItemKind>>(action, "--kind", options.kind,
                                                 {{"stop", ScriptItemKind::stop},
                                                  {"aside", ScriptItemKind::aside},
                                                  {"opening", ScriptItemKind::opening},
                                                  {"closing", ScriptItemKind::closing}},
                                                 "What it is", need);
}

} // namespace

void offer_script_items(Verb& verb, Frame& frame, const std::string& project) {
    constexpr const char* kListed = "As 'luftpause script PROJECT show' lists it";
    const auto options = std::make_shared<Options>(project);

    Verb& added = add_verb(
        verb, "add", "Add a stop, an aside, an opening or a closing",
        "luftpause script mill.luft add --kind stop --at 0:44.5 --text 'Hear how the line ends.' \\\n"
        "    --replay 0:41.0 0:44.5 --speed 0.5");
    kind_option(added, *options, Need::required);
    whole_option(added, "--moment", options->moment, 1, kAnyId, "Id of the moment that it speaks about");
    content_options(added, *options);
    performance_option(added, options->performance);
    on_run(added, frame, options, add);

    Verb& edited = add_verb(verb, "edit", "Change an item; words given here are never drafted over",
                            "luftpause script mill.luft edit 4 --text-file stop4.txt");
    ids_argument(edited, options->ids, 1, kListed);
    kind_option(edited, *options, Need::optional);
    content_options(edited, *options);
    flag(edited, "--no-quote", options->no_quote, "Play nothing of another performance");
    flag(edited, "--no-replay", options->no_replay, "Play nothing again");
    flag(edited, "--no-resume", options->no_resume, "Go on where playback halted");
    flag(edited, "--estimate", options->estimate, "Forget the rehearsed time");
    flag(edited, "--program-words", options->program_words, "Let the next draft word it anew");
    on_run(edited, frame, options, edit);

    Verb& removed = add_verb(verb, "remove", "Remove items", "luftpause script mill.luft remove 4");
    ids_argument(removed, options->ids, kOneOrMore, kListed);
    on_run(removed, frame, options, remove);
}

} // namespace luft::cli
