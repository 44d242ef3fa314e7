// luftpause undo, luftpause redo: back and forth through the journal of edits.
#include "cli/json_text.h"
#include "cli/sources.h"
#include "cli/table.h"
#include "cli/verbs.h"

namespace luft::cli {
namespace {

constexpr std::int64_t kMostSteps = 1000;

struct Options {
    std::string project;
    std::int64_t steps = 1;
    bool list = false;
    bool json = false;
};

/// Goes up to `steps` edits one way and names each.
void go(const Options& options, Frame& frame, std::optional<std::string> (project::Project::*step)(),
        const std::string& done, const std::string& nothing) {
    project::Project project = open_to_edit(options.project);
    std::string text;
    for (std::int64_t i = 0; i < options.steps; ++i) {
        const auto label = (project.*step)();
        if (!label) break;
        text += done + one_line(*label) + "\n";
    }
    frame.print(text.empty() ? nothing : text);
}

void list(const Options& options, Frame& frame) {
    const auto journal = open_to_read(options.project).journal();
    if (options.json) {
        auto value = Json::array();
        for (const auto& entry : journal)
            value.push_back({{"label", entry.label}, {"when", entry.when}, {"undone", entry.undone}});
        return frame.print(json_text(value));
    }
    Table table({{"WHEN (UTC)"}, {"STATE"}, {"EDIT"}});
    for (const auto& entry : journal)
        table.add({entry.when, entry.undone ? "undone" : "done", entry.label});
    frame.print(table.empty() ? "No edits yet.\n" : table.text());
}

void undo(const Options& options, Frame& frame) {
    if (options.list || options.json) return list(options, frame);
    go(options, frame, &project::Project::undo, "Undone: ", "Nothing to undo.\n");
}

void redo(const Options& options, Frame& frame) {
    go(options, frame, &project::Project::redo, "Done again: ", "Nothing to do again.\n");
}

Verb& offer(Verb& app, const std::shared_ptr<Options>& options, const std::string& name,
            const std::string& help, const std::string& example) {
    Verb& verb = add_verb(app, name, help, example);
    project_argument(verb, options->project);
    whole_option(verb, "--steps", options->steps, 1, kMostSteps, "How many edits");
    return verb;
}

} // namespace

void offer_undo(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = offer(app, options, "undo", "Take back the newest edit",
                       "luftpause undo mill.luft\nluftpause undo mill.luft --list");
    flag(verb, "--list", options->list, "Only list the edits, newest first");
    flag(verb, "--json", options->json, "List them as JSON");
    on_run(verb, frame, options, undo);
}

void offer_redo(Verb& app, Frame& frame) {
    const auto options = std::make_shared<Options>();
    Verb& verb = offer(app, options, "redo", "Do again what was undone last", "luftpause redo mill.luft");
    on_run(verb, frame, options, redo);
}

} // namespace luft::cli
