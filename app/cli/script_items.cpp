// luftpause script add, edit, remove: single stops and asides, and the coach's own words.
#include "cli/script_text.h"
#include "cli/script_verbs.h"
#include "cli/sources.h"

namespace luft::cli {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;

constexpr double kSlowest = 0.25; // the slowest replay, as in the domain model

struct Options {
    explicit Options(const std::string& named) : project(named) {}

    const std::string& project; ///< read before the action's own options
    std::string performance, text_file;
    std::vector<std::int64_t> ids;
    std::optional<ScriptItemKind> kind;
    std::optional<Seconds> at, resume, rehearsed;
    std::optional<std::string> text;
    std::vector<std::string> replay;
    std::optional<double> speed;
    std::int64_t moment = 0;
    bool no_replay = false, no_resume = false, estimate = false, program_words = false;
};

bool has_text(const Options& options) {
    return options.text || !options.text_file.empty();
}

/// Puts what was given on the command line into the item.
void apply(const Options& options, ScriptItem& item) {
    if (options.text && !options.text_file.empty())
        throw CLI::ValidationError("give --text or --text-file, not both");
    if (options.program_words && has_text(options))
        throw CLI::ValidationError("give words of your own or --program-words, not both");
    if (options.kind) item.kind = *options.kind;
    if (options.at) item.at = *options.at;
    if (options.text) item.text = *options.text;
    if (!options.text_file.empty()) item.text = read_text_file(options.text_file);
    if (has_text(options)) item.own_words = true;
    if (options.program_words) item.own_words = false;
    if (!options.replay.empty()) {
        const Span span{parse_time(options.replay[0]), parse_time(options.replay[1])};
        if (span.end <= span.start) throw CLI::ValidationError("the replay must end after it starts");
        item.replay = span;
    }
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
        throw CLI::ValidationError("say where: --at, or --moment");
    }
    apply(options, item);
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
    apply(options, item);
    project.change_script_item(item);
    frame.print(item_text(stored(project, item.id.value)));
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

void content_options(CLI::App* action, Options& options) {
    time_option(action, "--at", options.at, "Where in the recording");
    text_option(action, "--text", options.text, "Your words");
    action->add_option("--text-file", options.text_file, "Text file with your words")->type_name("FILE");
    action->add_option("--replay", options.replay, "Span that a stop plays again: two times")
        ->expected(2)
        ->type_name("FROM TO");
    number_option(action, "--speed", options.speed, kSlowest, 1, "Speed of the replay, 0.25 to 1");
    time_option(action, "--resume", options.resume, "Where playback goes on after a stop");
    time_option(action, "--rehearsed", options.rehearsed, "Measured talk time");
}

constexpr const char* kListed = "As 'luftpause script PROJECT show' lists it";

} // namespace

void offer_script_items(CLI::App* verb, Frame& frame, const std::string& project) {
    const auto options = std::make_shared<Options>(project);
    const std::vector<std::pair<std::string, std::optional<ScriptItemKind>>> kinds = {
        {"stop", ScriptItemKind::stop},
        {"aside", ScriptItemKind::aside},
        {"opening", ScriptItemKind::opening},
        {"closing", ScriptItemKind::closing}};

    CLI::App* added = verb->add_subcommand("add", "Add a stop, an aside, an opening or a closing");
    choice_option(added, "--kind", options->kind, kinds, "What it is")->required();
    added->add_option("--moment", options->moment, "The moment it speaks about")->type_name("ID");
    content_options(added, *options);
    performance_option(added, options->performance);
    example(added,
            "  luftpause script mill.luft add --kind stop --at 0:44.5 --text 'Hear how the line ends.' \\\n"
            "      --replay 0:41.0 0:44.5 --speed 0.5");
    on_run(added, frame, options, add);

    CLI::App* edited =
        verb->add_subcommand("edit", "Change an item; words given here are never drafted over");
    ids_option(edited, options->ids, 1, kListed);
    choice_option(edited, "--kind", options->kind, kinds, "Make it a stop, an aside …");
    content_options(edited, *options);
    edited->add_flag("--no-replay", options->no_replay, "Play nothing again");
    edited->add_flag("--no-resume", options->no_resume, "Go on where playback halted");
    edited->add_flag("--estimate", options->estimate, "Forget the rehearsed time");
    edited->add_flag("--program-words", options->program_words, "Let the next draft word it anew");
    example(edited, "  luftpause script mill.luft edit 4 --text-file stop4.txt");
    on_run(edited, frame, options, edit);

    CLI::App* removed = verb->add_subcommand("remove", "Remove items");
    ids_option(removed, options->ids, kOneOrMore, kListed);
    example(removed, "  luftpause script mill.luft remove 4");
    on_run(removed, frame, options, remove);
}

} // namespace luft::cli
